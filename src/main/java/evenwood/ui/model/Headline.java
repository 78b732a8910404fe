package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.live.LiveState;
import java.util.Optional;

/**
 * How everything stands, in one calm sentence with what to do.
 *
 * @param tone    whether all is well, something is to do, or something is amiss
 * @param sentence the sentence
 */
public record Headline(Tone tone, String sentence) {
    public enum Tone { CALM, WELL, TO_DO, AMISS }

    /** @param page what is open: before anything was chosen it says what the page is for */
    public static Headline of(Now now, String page, Words words) {
        if (!now.problem().isEmpty()) {
            return new Headline(Tone.AMISS, words.say("headline.problem", now.problem()));
        }
        if (now.isChecking()) {
            return new Headline(Tone.CALM, now.progress() < 1 ? words.say("headline.checking", now.progress()) : words.say("headline.advising"));
        }
        Optional<LiveState> state = now.state();
        if (state.isPresent() && state.get().phase() == LiveState.Phase.WAITING_FOR_DEVICE) {
            return new Headline(Tone.AMISS, words.say("headline.away", words.input(state.get().inputName())));
        }
        if (state.isPresent() && state.get().presence().isDead()) {
            return new Headline(Tone.AMISS, words.say("headline.dead"));
        }
        if (now.assessment().isEmpty()) {
            return new Headline(Tone.CALM, now.choice().isEmpty() ? words.sayOr("headline.on." + page, words.say("headline.choose"))
                : words.say("headline.listening"));
        }
        return judged(now.assessment().get(), words);
    }

    private static Headline judged(Assessment assessment, Words words) {
        if (!assessment.readings().hasPlaying()) {
            return new Headline(Tone.CALM, words.say("headline.play"));
        }
        int moves = assessment.moves().size();
        if (moves > 0) {
            return new Headline(Tone.TO_DO, words.say("headline.turn", moves));
        }
        int findings = assessment.verdict().findings().size();
        return findings == 0 ? new Headline(Tone.WELL, words.say("headline.well")) : new Headline(Tone.TO_DO, words.say("headline.findings", findings));
    }
}
