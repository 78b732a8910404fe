package evenwood.ui.model;

import evenwood.measure.NoteName;
import evenwood.measure.PitchReading;

/**
 * The note that sounds now.
 *
 * @param note  its name; a dash when none is clear
 * @param cents how far above it, −50 to 50; 0 when none is clear
 * @param clear whether there is a note
 * @param words how it stands: in tune, so much too low, so much too high
 */
public record TunerPicture(String note, double cents, boolean clear, String words) {
    /** Nearer than most players hear on a short note; common practice of tuners. */
    private static final double IN_TUNE_CENTS = 5;
    /** A string two whole tones slack; what sounds lower is two strings ringing together, which share a period. Our choice. */
    private static final double LOWEST_TUNED_DOWN = Math.pow(2, -4.0 / 12);

    /** @param lowestHz the lowest note of the instrument; 0 when it is not known */
    public static TunerPicture of(Now now, Words words, double lowestHz) {
        PitchReading pitch = now.isLive() ? now.readings().map(each -> each.now().pitch()).orElse(PitchReading.NONE) : PitchReading.NONE;
        if (pitch.midi() == NoteName.NONE || pitch.frequencyHz() < lowestHz * LOWEST_TUNED_DOWN) {
            return new TunerPicture(words.say("number.none"), 0, false, words.say(now.isLive() ? "tuner.play" : "tuner.live-only"));
        }
        double cents = pitch.cents();
        String how = Math.abs(cents) <= IN_TUNE_CENTS ? words.say("tuner.in-tune")
            : words.say(cents > 0 ? "tuner.high" : "tuner.low", Math.round(Math.abs(cents)));
        return new TunerPicture(words.sayOr("note." + pitch.midi() % 12, pitch.name()) + (pitch.midi() / 12 - 1), cents, true, how);
    }

    public boolean isInTune() {
        return clear && Math.abs(cents) <= IN_TUNE_CENTS;
    }
}
