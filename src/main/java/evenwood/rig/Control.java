package evenwood.rig;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One control of an amp, a strip or a pedal.
 *
 * @param name        as printed on it
 * @param kind        what it does
 * @param frequencyHz where it acts, if that is fixed
 * @param frequency   the dial for where it acts, if that can be swept
 * @param gain        the dial for how much, in decibels
 * @param q           width, the audio EQ cookbook's Q; shelves of slope 1 have 0.7071
 * @param order       of a high-pass, 1 to 4; 2 otherwise
 * @param switched    whether it can be switched off (then it does nothing)
 */
public record Control(String name, Kind kind, OptionalDouble frequencyHz, Optional<Dial> frequency, Optional<Dial> gain,
                      double q, int order, boolean switched) {
    /** What a control does. */
    public enum Kind { GAIN, VOLUME, LOW_SHELF, HIGH_SHELF, PEAK, HIGH_PASS, NOTCH }

    static Control read(YamlFields fields) {
        Kind kind = fields.choice("kind", Kind.class);
        boolean level = kind == Kind.GAIN || kind == Kind.VOLUME;
        Optional<Dial> gain = fields.has("gain") ? Optional.of(Dial.read(fields.part("gain"), -120, 80, "dB")) : Optional.empty();
        Optional<Dial> frequency = fields.has("frequency") ? Optional.of(Dial.read(fields.part("frequency"), 10, 24_000, "Hz")) : Optional.empty();
        OptionalDouble fixedHz = fields.optionalNumber("frequencyHz", 10, 24_000, "Hz");
        Control control = new Control(fields.text("name"), kind, fixedHz, frequency, gain,
            fields.optionalNumber("q", 0.1, 100, "the cookbook's Q").orElse(Math.sqrt(0.5)),
            (int) fields.optionalNumber("order", 1, 4, "poles").orElse(2), fields.flag("switched", false));
        if (!level && fixedHz.isPresent() == frequency.isPresent()) {
            throw fields.wrong("frequencyHz", fixedHz.isPresent() ? "given beside a frequency dial" : "missing",
                "a filter has either frequencyHz or a frequency dial");
        }
        if (gain.isEmpty() && kind != Kind.HIGH_PASS && kind != Kind.NOTCH) {
            throw fields.wrong("gain", "missing", "a dial in dB is needed");
        }
        fields.nothingElse();
        return control;
    }

    /** Whether it shapes the tone; gain and volume do not. */
    public boolean shapesTone() {
        return kind != Kind.GAIN && kind != Kind.VOLUME;
    }
}
