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

    public static Headline of(Now now, Words words) {
        if (!now.problem().isEmpty()) {
            return new Headline(Tone.AMISS, words.say("headline.problem", now.problem()));
        }
        if (now.isChecking()) {
            return new Headline(Tone.CALM, words.say("headline.checking", now.progress()));
        }
        Optional<LiveState> state = now.state();
        if (state.isPresent() && state.get().phase() == LiveState.Phase.WAITING_FOR_DEVICE) {
            return new Headline(Tone.AMISS, words.say("headline.away", words.input(state.get().inputName())));
        }
        if (state.isPresent() && state.get().presence().isDead()) {
            return new Headline(Tone.AMISS, words.say("headline.dead"));
        }
        if (now.assessment().isEmpty()) {
            return new Headline(Tone.CALM, words.say(now.choice().isEmpty() ? "headline.choose" : "headline.listening"));
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
