package evenwood.rig;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the signal begins: a pickup, or a microphone on the instrument, as an electrical source.
 *
 * <p>Every one is a voltage behind a series resistance, inductance and capacitance, with a capacitance and a resistance
 * across its terminals. A piezo is mostly the series capacitance, a coil all of them, a battery preamp a small resistance.
 *
 * @param id                 such as {@code piezo-under-saddle}
 * @param name               for people, to follow "the": "piezo strip under the saddle"
 * @param kind               how it works
 * @param seriesOhms         resistance in series, 0 for none
 * @param seriesHenries      inductance in series, 0 for none
 * @param seriesFarads       capacitance in series; empty for a direct path
 * @param parallelFarads     across the terminals, 0 for none
 * @param parallelOhms       across the terminals; empty for none
 * @param balanced           whether it has two signal wires apart from the screen
 * @param power              what it needs
 * @param phantomMilliamperes what it draws from phantom power, 0 for none
 * @param usualDbu           RMS of usual playing, unloaded
 * @param peakDbu            peaks of the hardest playing, unloaded
 * @param levelSpreadDb      how far instruments and players differ from that, one standard deviation
 * @param maximumDbu         where its own preamp overloads, if it has one
 * @param noiseDbu           noise of its own preamp in 20 kHz; −Infinity for none
 * @param source             where the figures are from
 * @param colour             what it adds to the instrument's own sound, where something is known of its kind
 */
public record Pickup(String id, String name, Kind kind, double seriesOhms, double seriesHenries, OptionalDouble seriesFarads,
                     double parallelFarads, OptionalDouble parallelOhms, boolean balanced, Power power, double phantomMilliamperes,
                     double usualDbu, double peakDbu, double levelSpreadDb, OptionalDouble maximumDbu, double noiseDbu, String source,
                     Optional<PickupColour> colour) {
    /** How the signal is made. */
    public enum Kind {
        PIEZO, MAGNETIC, ACTIVE, DYNAMIC_MICROPHONE, RIBBON_MICROPHONE, CONDENSER_MICROPHONE;

        public boolean isMicrophone() {
            return this == DYNAMIC_MICROPHONE || this == RIBBON_MICROPHONE || this == CONDENSER_MICROPHONE;
        }
    }

    /** A piezo element with no amplifier of its own. */
    public boolean isUnbufferedPiezo() {
        return kind == Kind.PIEZO;
    }

    public SignalKind output() {
        return kind.isMicrophone() ? SignalKind.MICROPHONE : SignalKind.INSTRUMENT;
    }

    static Pickup read(YamlFields fields) {
        OptionalDouble seriesPicofarads = fields.optionalNumber("seriesPicofarads", 1, 1e6, "pF");
        Pickup pickup = new Pickup(fields.text("id"), fields.text("name"), fields.choice("kind", Kind.class),
            fields.optionalNumber("seriesOhms", 0, 1e6, "ohm").orElse(0), fields.optionalNumber("seriesHenries", 0, 100, "H").orElse(0),
            seriesPicofarads.isPresent() ? OptionalDouble.of(seriesPicofarads.getAsDouble() * 1e-12) : OptionalDouble.empty(),
            fields.optionalNumber("parallelPicofarads", 0, 1e6, "pF").orElse(0) * 1e-12,
            fields.optionalNumber("parallelOhms", 100, 1e9, "ohm"), fields.flag("balanced", false),
            fields.has("power") ? fields.choice("power", Power.class) : Power.NONE,
            fields.optionalNumber("phantomMilliamperes", 0, 15, "mA").orElse(0),
            fields.number("usualDbu", -100, 20, "dBu"), fields.number("peakDbu", -100, 30, "dBu"),
            fields.number("levelSpreadDb", 0, 20, "dB"), fields.optionalNumber("maximumDbu", -40, 30, "dBu"),
            fields.optionalNumber("noiseDbu", -140, -20, "dBu").orElse(Double.NEGATIVE_INFINITY), fields.text("source"),
            fields.has("colour") ? Optional.of(PickupColour.read(fields.part("colour"))) : Optional.empty());
        if (pickup.kind == Kind.PIEZO && pickup.seriesFarads.isEmpty()) {
            throw fields.wrong("seriesPicofarads", "missing", "a piezo is a capacitance: say how much");
        }
        if (pickup.peakDbu < pickup.usualDbu) {
            throw fields.wrong("peakDbu", String.valueOf(pickup.peakDbu), "peaks cannot lie under usualDbu");
        }
        fields.nothingElse();
        return pickup;
    }
}
