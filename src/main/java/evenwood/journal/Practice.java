package evenwood.journal;

import evenwood.measure.TakeReadings;
import java.time.OffsetDateTime;

/**
 * One sitting of live playing.
 *
 * @param uid            the same in every copy of the journal
 * @param at             when it began
 * @param instrument     empty when nobody said
 * @param figures        what was heard
 */
public record Practice(String uid, OffsetDateTime at, String instrument, Figures figures) {
    /**
     * @param listenedSeconds how long it was listened
     * @param playingSeconds  how much of it was playing
     * @param notes           how many notes
     * @param softDbfs        soft notes; −Infinity while unknown
     * @param usualDbfs       usual notes
     * @param hardDbfs        hard notes
     * @param integratedLufs  loudness
     * @param lowDb           bass against the whole
     * @param midDb           middle against the whole
     * @param highDb          treble against the whole
     * @param truePeakDbtp    highest peak
     * @param clippedSamples  samples at full scale
     */
    public record Figures(double listenedSeconds, double playingSeconds, int notes, double softDbfs, double usualDbfs, double hardDbfs,
                          double integratedLufs, double lowDb, double midDb, double highDb, double truePeakDbtp, long clippedSamples) { }

    /** What a live take says of a sitting so far. */
    public static Practice of(String uid, OffsetDateTime at, String instrument, TakeReadings heard) {
        return new Practice(uid, at, instrument, new Figures(heard.take().durationSeconds(), heard.activity().playingSeconds(), heard.dynamics().noteCount(),
            heard.dynamics().softDbfs(), heard.dynamics().usualDbfs(), heard.dynamics().hardDbfs(), heard.loudness().integratedLufs(),
            heard.spectrum().lowDb(), heard.spectrum().midDb(), heard.spectrum().highDb(), heard.truePeak().truePeakDbtp(), heard.distortion().clippedSamples()));
    }
}
