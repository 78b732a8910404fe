package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.judge.ToneComparison;
import java.util.Optional;

/** What the lines and ribbons of a {@link TonePicture} mean: only of those that are there. */
public final class ToneWords {
    private ToneWords() { }

    /** Of a take that is held against what its instrument usually sounds like. */
    public static String of(TonePicture picture, Words words) {
        return of(picture, Optional.empty(), words);
    }

    /** @param shown what the picture was made of */
    public static String of(TonePicture picture, Optional<Assessment> shown, Words words) {
        boolean take = shown.flatMap(each -> each.verdict().tone()).filter(tone -> tone.against() == ToneComparison.Against.TAKE).isPresent();
        if (picture.isEmpty()) {
            return words.say(picture.wanted().isEmpty() ? "tone.empty" : "tone.empty-usual");
        }
        StringBuilder text = new StringBuilder(words.say(picture.wanted().isEmpty() ? "tone.no-target" : take ? "tone.legend-take" : "tone.legend"));
        if (!picture.predicted().isEmpty()) {
            text.append(' ').append(words.say("tone.legend-predicted"));
        }
        if (!picture.before().isEmpty()) {
            text.append(' ').append(words.say("tone.legend-before"));
        }
        return text.toString();
    }
}
