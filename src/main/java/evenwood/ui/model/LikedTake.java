package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.judge.SharedNotesRule;
import evenwood.judge.ToneComparison;
import evenwood.measure.TakeReadings;

/**
 * A kept take that others should sound like.
 *
 * @param number   in the journal
 * @param readings with playing in them
 */
public record LikedTake(long number, TakeReadings readings) {
    ToneComparison comparison(TakeReadings heard) {
        return ToneComparison.withTake(heard, readings);
    }

    /** With what should be played so that the comparison becomes surer. */
    Assessment withMissing(Assessment assessment) {
        return assessment.withMissing(SharedNotesRule.missing(assessment.verdict().tone().orElseThrow(), assessment.readings(), readings));
    }
}
