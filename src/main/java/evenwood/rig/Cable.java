package evenwood.rig;

/**
 * A kind of cable.
 *
 * @param id                 such as {@code instrument-cable}
 * @param name               for people
 * @param made               what it is made for
 * @param faradsPerMetre     between the two wires that carry the signal
 * @param ohmsPerMetre       there and back
 * @param henriesPerMetre    there and back
 * @param squareMillimetres  cross-section of the conductor
 * @param shielded           whether a screen keeps electric fields out
 * @param balanced           whether it has two signal wires apart from the screen
 * @param microphonePlug     whether it ends in a microphone plug though it is not balanced
 * @param longestHighImpedanceMetres longest good length after a pickup with no preamp
 * @param longestLowImpedanceMetres  longest good length after a preamp, DI or amplifier
 * @param source             where the figures are from
 */
public record Cable(String id, String name, Made made, double faradsPerMetre, double ohmsPerMetre, double henriesPerMetre,
                    double squareMillimetres, boolean shielded, boolean balanced, boolean microphonePlug, double longestHighImpedanceMetres,
                    double longestLowImpedanceMetres, String source) {
    /** What a cable is made for. */
    public enum Made { INSTRUMENT, MICROPHONE, SPEAKER }

    static Cable read(YamlFields fields) {
        Cable cable = new Cable(fields.text("id"), fields.text("name"), fields.choice("made", Made.class),
            fields.number("picofaradsPerMetre", 1, 1000, "pF/m") * 1e-12, fields.number("ohmsPerMetre", 0, 10, "ohm/m"),
            fields.optionalNumber("microhenriesPerMetre", 0, 10, "µH/m").orElse(0) * 1e-6,
            fields.number("squareMillimetres", 0.01, 50, "mm²"), fields.flag("shielded"), fields.flag("balanced"), fields.flag("microphonePlug", false),
            fields.number("longestHighImpedanceMetres", 0, 1000, "m"), fields.number("longestLowImpedanceMetres", 0, 1000, "m"),
            fields.text("source"));
        fields.nothingElse();
        return cable;
    }
}
