package evenwood.cli;

import evenwood.coach.Assessment;
import evenwood.judge.SharedNotesRule;
import evenwood.judge.Statement;
import evenwood.judge.ToneComparison;
import evenwood.live.WholeTake;
import evenwood.measure.TakeReadings;
import evenwood.sound.SoundSource;
import java.util.List;

/** The take another one should sound like. */
record WantedTake(TakeReadings readings) {
    /**
     * @param what the command and option that named the take, for the words when it cannot be compared with
     * @throws BadInput when it cannot
     */
    static WantedTake measure(String what, String path, int channel, Terminal terminal) {
        try (SoundSource source = TakeArgument.open(path, channel); ProgressBar progress = new ProgressBar(terminal)) {
            WholeTake whole = WholeTake.measure(source, progress::show);
            if (whole.failure().isPresent()) {
                throw new BadInput(what + ": " + whole.failure().get().getMessage());
            }
            if (!whole.readings().hasPlaying()) {
                throw new BadInput(what + ": no playing was heard in " + path + "; name a take of the same instrument with single notes in it");
            }
            return new WantedTake(whole.readings());
        }
    }

    ToneComparison comparison(TakeReadings heard) {
        return ToneComparison.withTake(heard, readings);
    }

    /** With what should be played so that the comparison becomes surer. */
    Assessment withMissing(Assessment assessment) {
        List<Statement> missing = assessment.readings().hasPlaying()
            ? SharedNotesRule.missing(assessment.verdict().tone().orElseThrow(), assessment.readings(), readings) : List.of();
        return assessment.withMissing(missing);
    }
}
