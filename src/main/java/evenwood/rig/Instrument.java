package evenwood.rig;

import java.util.List;
import java.util.Optional;

/**
 * What is known of a kind of instrument.
 *
 * @param id        such as {@code octave-mandolin}
 * @param name      for people
 * @param played    how sound is made
 * @param lowestHz  lowest usual fundamental
 * @param highestHz highest usual fundamental; typical, not hard
 * @param courses   from the lowest; empty for an instrument without strings
 * @param source    where the facts are from, or how sure they are
 * @param target    how it usually sounds, if that is known
 */
public record Instrument(String id, String name, Played played, double lowestHz, double highestHz, List<Course> courses, String source,
                         Optional<ToneTarget> target) {
    /** How an instrument is made to sound. */
    public enum Played { PLUCKED, BOWED, PLUCKED_OR_BOWED, STRUCK }

    public Instrument {
        courses = List.copyOf(courses);
    }

    static Instrument read(YamlFields fields) {
        Instrument instrument = new Instrument(fields.text("id"), fields.text("name"), fields.choice("played", Played.class),
            fields.number("lowestHz", 16, 5000, "Hz"), fields.number("highestHz", 16, 20_000, "Hz"),
            fields.parts("courses").stream().map(Instrument::course).toList(), fields.text("source"),
            fields.has("target") ? Optional.of(ToneTarget.read(fields.part("target"))) : Optional.empty());
        if (instrument.lowestHz > instrument.highestHz) {
            throw fields.wrong("highestHz", String.valueOf(instrument.highestHz), "it must not lie under lowestHz");
        }
        fields.nothingElse();
        return instrument;
    }

    private static Course course(YamlFields fields) {
        Course course = new Course(fields.parts("strings").stream().map(Instrument::string).toList());
        fields.nothingElse();
        return course;
    }

    private static Course.OpenString string(YamlFields fields) {
        Course.OpenString string = new Course.OpenString(fields.text("note"), fields.number("openHz", 16, 5000, "Hz"));
        fields.nothingElse();
        return string;
    }
}
