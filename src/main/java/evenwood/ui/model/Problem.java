package evenwood.ui.model;

import evenwood.journal.JournalProblem;
import evenwood.journal.JournalTrouble;
import evenwood.rig.PresetProblem;
import evenwood.sound.SoundProblem;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What went wrong, to be said in the player's language.
 *
 * @param key         of its sentence; empty when all is well
 * @param values      names and figures of the sentence
 * @param keptSeconds how much was heard before and is kept, if that is known
 */
public record Problem(String key, List<Object> values, OptionalDouble keptSeconds) {
    public static final Problem NONE = new Problem("", List.of(), OptionalDouble.empty());
    private static final String OTHER = "problem.other";

    /** What only its own line tells is said with that line. */
    static Problem of(Throwable thrown) {
        if (thrown instanceof SoundProblem sound) {
            return new Problem("problem." + sound.trouble().id(), sound.values(), sound.heardSeconds() > 0 ? OptionalDouble.of(sound.heardSeconds()) : OptionalDouble.empty());
        }
        if (thrown instanceof JournalProblem journal && journal.trouble() != JournalTrouble.OTHER) {
            return new Problem("problem.journal-" + journal.trouble().id(), journal.values(), OptionalDouble.empty());
        }
        if (thrown instanceof PresetProblem preset) {
            return new Problem("problem.preset", List.of(String.valueOf(preset.getMessage())), OptionalDouble.empty());
        }
        return new Problem(OTHER, List.of(String.valueOf(thrown.getMessage())), OptionalDouble.empty());
    }

    public boolean isEmpty() {
        return key.isEmpty();
    }
}
