package evenwood.rig;

/**
 * The audio transformer of a passive box.
 *
 * @param ratio          turns of the primary to one of the secondary
 * @param primaryHenries magnetising inductance seen from the primary
 * @param primaryOhms    resistance of the primary's wire
 * @param secondaryOhms  resistance of the secondary's wire
 */
public record Transformer(double ratio, double primaryHenries, double primaryOhms, double secondaryOhms) {
    static Transformer read(YamlFields fields) {
        Transformer transformer = new Transformer(fields.number("ratio", 0.01, 100, "turns to one"),
            fields.number("primaryHenries", 0.001, 10_000, "H"), fields.number("primaryOhms", 0, 100_000, "ohm"),
            fields.number("secondaryOhms", 0, 100_000, "ohm"));
        fields.nothingElse();
        return transformer;
    }
}
