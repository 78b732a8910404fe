package evenwood.rig;

import java.util.OptionalDouble;

/**
 * Where the chain ends: a socket of a mixer, an interface, an amplifier or a cabinet.
 *
 * @param id            such as {@code mixer-microphone}
 * @param name          for people
 * @param device        what it is part of
 * @param accepts       the family of level it is made for
 * @param inputOhms     its impedance
 * @param inputFarads   its capacitance
 * @param balanced      whether it takes the difference of two wires
 * @param gain          how far its gain reaches
 * @param maximumDbu    highest peak it takes with the least gain
 * @param fullScaleDbu  level behind the gain that is 0 dBFS, or an amplifier's full output
 * @param digital       whether a converter follows, so that levels can be said in dBFS
 * @param einDbu        equivalent input noise in 20 kHz, unweighted, at much gain
 * @param einSourceOhms with what source resistance that was measured
 * @param outputNoiseDbu noise behind the gain in 20 kHz; −Infinity for none
 * @param phantomVolts  what it offers; 0 for none
 * @param earthed       whether its device meets the mains earth (also through a computer's charger)
 * @param source        where the figures are from
 */
public record Input(String id, String name, Device device, SignalKind accepts, double inputOhms, double inputFarads, boolean balanced,
                    GainRange gain, double maximumDbu, double fullScaleDbu, boolean digital, OptionalDouble einDbu,
                    double einSourceOhms, double outputNoiseDbu, double phantomVolts, boolean earthed, String source) {
    /** What an input is part of. */
    public enum Device { MIXER, INTERFACE, AMP, RECORDER, CABINET }

    /** The level that drives it fully when its gain is all the way up. */
    public double sensitivityDbu() {
        return fullScaleDbu - gain.mostDb();
    }

    static Input read(YamlFields fields) {
        Input input = new Input(fields.text("id"), fields.text("name"), fields.choice("device", Device.class),
            fields.choice("accepts", SignalKind.class), fields.number("inputOhms", 1, 1e9, "ohm"),
            fields.optionalNumber("inputPicofarads", 0, 1e5, "pF").orElse(0) * 1e-12, fields.flag("balanced", false),
            fields.has("gainDb") ? GainRange.read(fields.part("gainDb")) : GainRange.NONE,
            fields.number("maximumDbu", -40, 60, "dBu"), fields.number("fullScaleDbu", -40, 60, "dBu"), fields.flag("digital", false),
            fields.optionalNumber("einDbu", -140, -20, "dBu"), fields.optionalNumber("einSourceOhms", 0, 1e6, "ohm").orElse(0),
            fields.optionalNumber("outputNoiseDbu", -140, 0, "dBu").orElse(Double.NEGATIVE_INFINITY),
            fields.optionalNumber("phantomVolts", 0, 52, "V").orElse(0), fields.flag("earthed", false), fields.text("source"));
        fields.nothingElse();
        return input;
    }
}
