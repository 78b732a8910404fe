package evenwood.measure;

import evenwood.sound.AudioBlock;
import evenwood.sound.Decibels;
import java.util.Arrays;

/**
 * The highest point the sound reaches between samples too, of everything heard since the last reset and of every hop.
 *
 * <p>In: mono frames, full scale 1.0, any block size. Out: {@link TruePeakReading}, dBTP; hops by number in the take.
 * <p>How: fourfold oversampling ({@link TruePeakFilter}), highest magnitude of samples and new points. Source: ITU-R
 * BS.1770-5 Annex 2. Our choice: fourfold at every rate, where the standard lets higher rates do with less; it costs
 * little, and the error can only become smaller.
 * <p>Limits: +0.2 / −0.4 dB for the signals of EBU Tech 3341 (TruePeakMeterReferenceTest). A point between samples is
 * told 6 frames late, so it may count to the next hop; of the last 6 frames of a take only the samples count.
 * <p>Thread: one owner. {@link #accept} never allocates, locks, logs, or touches files.
 */
public final class TruePeakMeter {
    private static final int PEAK = 0;
    private static final int COLUMNS = 1;

    private final TruePeakFilter filter = new TruePeakFilter();
    private final HopHistory hops;
    private final int hopFrames;
    /** Highest of the open hop, spread over as many places as one pass has frames. */
    private final float[] openHop = new float[TruePeakFilter.PASS_FRAMES];
    private int filled;
    private float closedPeak;

    public TruePeakMeter(HopGrid grid, int capacityHops) {
        hops = new HopHistory(capacityHops, COLUMNS);
        hopFrames = grid.hopFrames();
    }

    /** Hears one block and keeps none of it. [audio thread] */
    public void accept(AudioBlock block) {
        int done = 0;
        while (done < block.frames()) {
            int count = Math.min(Math.min(block.frames() - done, hopFrames - filled), TruePeakFilter.PASS_FRAMES);
            filter.raise(openHop, block.samples(), done, count);
            done += count;
            filled += count;
            if (filled == hopFrames) {
                closeHop();
            }
        }
    }

    /** What has been heard so far; {@link TruePeakReading#SILENCE} before the first block. [owner's thread] */
    public TruePeakReading reading() {
        return new TruePeakReading(Decibels.ofAmplitude(Math.max(closedPeak, openPeak())));
    }

    /** The oldest hop still remembered. */
    public long firstHop() {
        return hops.firstHop();
    }

    /** One past the newest complete hop. */
    public long endHop() {
        return hops.endHop();
    }

    /** Highest point told during a hop; −Infinity when it was silent. */
    public double hopPeakDbtp(long hop) {
        return Decibels.ofAmplitude(hops.get(hop, PEAK));
    }

    public void reset() {
        filter.reset();
        hops.reset();
        Arrays.fill(openHop, 0f);
        filled = 0;
        closedPeak = 0;
    }

    private void closeHop() {
        float peak = openPeak();
        hops.set(hops.append(), PEAK, peak);
        closedPeak = Math.max(closedPeak, peak);
        Arrays.fill(openHop, 0f);
        filled = 0;
    }

    private float openPeak() {
        float peak = 0;
        for (float value : openHop) {
            if (value > peak) {
                peak = value;
            }
        }
        return peak;
    }
}
