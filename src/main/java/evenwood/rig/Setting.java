package evenwood.rig;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where one control stands.
 *
 * @param control   the control
 * @param on        false when it is switched off
 * @param gain      position of its gain dial, if it has one
 * @param frequency position of its frequency dial, if it has one
 */
public record Setting(Control control, boolean on, OptionalDouble gain, OptionalDouble frequency) {
    public Setting {
        if (control.gain().isPresent() != gain.isPresent() || control.frequency().isPresent() != frequency.isPresent()) {
            throw new IllegalArgumentException("setting of " + control.name() + ": gain=" + gain + ", frequency=" + frequency
                + ", but there must be a position for each dial it has");
        }
    }

    /** As gear stands when nobody touched it: gains where they do nothing, filters off, sweeps in the middle. */
    public static Setting neutral(Control control) {
        return new Setting(control, !control.switched(), control.gain().map(Setting::neutralGain).orElse(OptionalDouble.empty()),
            control.frequency().map(dial -> OptionalDouble.of(dial.settable((dial.least() + dial.most()) / 2))).orElse(OptionalDouble.empty()));
    }

    private static OptionalDouble neutralGain(Dial dial) {
        return OptionalDouble.of(dial.positionOfDb(0));
    }

    public Setting withGain(double position) {
        return new Setting(control, on, OptionalDouble.of(position), frequency);
    }

    public Setting withFrequency(double position) {
        return new Setting(control, on, gain, OptionalDouble.of(position));
    }

    public Setting switched(boolean nowOn) {
        return new Setting(control, nowOn, gain, frequency);
    }

    /** Decibels it gives now; 0 without a gain dial. */
    public double gainDb() {
        return gain.isPresent() ? control.gain().orElseThrow().db(gain.getAsDouble()) : 0;
    }

    /** Where it acts now; 0 for gain and volume. */
    public double frequencyHz() {
        return frequency.isPresent() ? control.frequency().orElseThrow().hz(frequency.getAsDouble()) : control.frequencyHz().orElse(0);
    }

    /** As one would read it off the control: "6", "off", "−4 dB at 420 Hz". */
    public String say() {
        if (!on) {
            return "off";
        }
        Optional<String> much = gain.isPresent() ? Optional.of(control.gain().orElseThrow().scale().say(gain.getAsDouble())) : Optional.empty();
        Optional<String> where = frequency.isPresent() ? Optional.of(control.frequency().orElseThrow().scale().say(frequency.getAsDouble())) : Optional.empty();
        if (much.isPresent() && where.isPresent()) {
            return much.get() + " at " + where.get();
        }
        return much.or(() -> where).orElse("on");
    }

    /**
     * A setting as a player writes it behind an @: {@code 4.5}, {@code 4½}, {@code off}, or both dials as {@code 4.5,500}.
     *
     * @throws PresetProblem saying what is allowed
     */
    public static Setting ofWord(Control control, String word) {
        if (control.switched() && isSwitchWord(word)) {
            return neutral(control).switched(word.matches("on|true"));
        }
        String[] parts = word.split(",", -1);
        int dials = (control.gain().isPresent() ? 1 : 0) + (control.frequency().isPresent() ? 1 : 0);
        if (parts.length != dials) {
            throw new PresetProblem("position of " + control.name() + ": " + word + ", but " + (dials == 2 ? "both dials are needed: gain,frequency"
                : dials == 1 ? "one number is needed" : "it is only switched: on or off"));
        }
        return new Setting(control, true, control.gain().isPresent() ? OptionalDouble.of(number(control, control.gain().get(), parts[0])) : OptionalDouble.empty(),
            control.frequency().isPresent() ? OptionalDouble.of(number(control, control.frequency().get(), parts[dials - 1])) : OptionalDouble.empty());
    }

    /** The setting that {@link #say} says in these words; empty when no settable position of the control is said so. */
    public static Optional<Setting> ofSaid(Control control, String words) {
        if (words.equals("off") || words.equals("on")) {
            return control.switched() ? Optional.of(neutral(control).switched(words.equals("on"))) : Optional.empty();
        }
        String[] parts = words.split(" at ", 2);
        Optional<Double> gain = control.gain().flatMap(dial -> said(dial, parts[0]));
        Optional<Double> frequency = control.frequency().flatMap(dial -> said(dial, parts[parts.length - 1]));
        boolean known = gain.isPresent() == control.gain().isPresent() && frequency.isPresent() == control.frequency().isPresent();
        return known ? Optional.of(new Setting(control, true, gain.map(OptionalDouble::of).orElse(OptionalDouble.empty()),
            frequency.map(OptionalDouble::of).orElse(OptionalDouble.empty()))) : Optional.empty();
    }

    private static Optional<Double> said(Dial dial, String words) {
        return dial.positions().stream().filter(position -> dial.scale().say(position).equals(words)).findFirst();
    }

    private static double number(Control control, Dial dial, String word) {
        try {
            double position = Double.parseDouble(word.strip().replace('−', '-').replaceFirst("^\\+", "").replaceFirst("^(-?)([¼½¾])$", "$10$2")
                .replace("¼", ".25").replace("½", ".5").replace("¾", ".75"));
            if (position >= dial.least() && position <= dial.most()) {
                return position;
            }
        } catch (NumberFormatException notANumber) {
            // Falls through to the sentence that says what is allowed.
        }
        throw new PresetProblem("position of " + control.name() + ": " + word + ", but a number from " + dial.least() + " to " + dial.most()
            + " is needed, as on its own marking");
    }

    static Setting read(Control control, YamlFields positions) {
        if (!positions.has(control.name())) {
            return neutral(control);
        }
        if (positions.isPart(control.name())) {
            YamlFields parts = positions.part(control.name());
            Setting setting = new Setting(control, parts.flag("on", true), position(parts, "gain", control.gain()),
                position(parts, "frequency", control.frequency()));
            parts.nothingElse();
            return setting;
        }
        if (control.switched() && isSwitchWord(positions.text(control.name()))) {
            return neutral(control).switched(positions.text(control.name()).matches("on|true"));
        }
        if (control.gain().isPresent() == control.frequency().isPresent()) {
            throw positions.wrong(control.name(), positions.text(control.name()), control.gain().isPresent()
                ? "it has two dials: write { gain: …, frequency: … }" : "it is only switched: write on or off");
        }
        return new Setting(control, true, position(positions, control.name(), control.gain()), position(positions, control.name(), control.frequency()));
    }

    private static boolean isSwitchWord(String text) {
        return text.matches("on|off|true|false");
    }

    static OptionalDouble position(YamlFields fields, String field, Optional<Dial> dial) {
        return dial.isEmpty() ? OptionalDouble.empty()
            : OptionalDouble.of(fields.number(field, dial.get().least(), dial.get().most(), "the control's marking"));
    }
}
