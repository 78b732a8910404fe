package evenwood.measure;

import evenwood.sound.AudioBlock;
import evenwood.sound.Decibels;

/**
 * Highest sample and average level of everything heard since the last reset, and of every hop.
 *
 * <p>In: mono frames, full scale 1.0, any block size. Out: {@link LevelReading}, dBFS; hops by number in the take.
 * <p>How: rms = sqrt(mean(x²)), so a full-scale sine reads −3.01 dBFS; no weighting, no DC removal. Source: definition.
 * <p>Limits: sample peak, not true peak. Block size does not change the reading (LevelMeterPropertyTest); the hops
 * remembered are the last {@code capacityHops}.
 * <p>Thread: one owner. {@link #accept} never allocates, locks, logs, or touches files.
 */
public final class LevelMeter {
    private static final int PEAK = 0;
    private static final int MEAN_SQUARE = 1;
    private static final int COLUMNS = 2;

    private final HopHistory hops;
    /** A hop is gathered first and summed as a whole: the order of adding is then the same for every block size. */
    private final float[] hop;
    private final StretchSums hopSums = new StretchSums();
    private final StretchSums openSums = new StretchSums();
    private int filled;
    private double peak;
    private double sum;
    private double sumOfSquares;
    private long closedFrames;

    public LevelMeter(HopGrid grid, int capacityHops) {
        hops = new HopHistory(capacityHops, COLUMNS);
        hop = new float[grid.hopFrames()];
    }

    /** Hears one block and keeps none of it. [audio thread] */
    public void accept(AudioBlock block) {
        int done = 0;
        while (done < block.frames()) {
            int count = Math.min(block.frames() - done, hop.length - filled);
            System.arraycopy(block.samples(), done, hop, filled, count);
            done += count;
            filled += count;
            if (filled == hop.length) {
                closeHop();
            }
        }
    }

    /** What has been heard so far; {@link LevelReading#SILENCE} before the first block. [owner's thread] */
    public LevelReading reading() {
        long frames = closedFrames + filled;
        if (frames == 0) {
            return LevelReading.SILENCE;
        }
        openSums.of(hop, filled);
        return new LevelReading(
            Decibels.ofAmplitude(Math.max(peak, openSums.peak)),
            Decibels.ofPower((sumOfSquares + openSums.sumOfSquares) / frames),
            (sum + openSums.sum) / frames, frames);
    }

    /** The oldest hop still remembered. */
    public long firstHop() {
        return hops.firstHop();
    }

    /** One past the newest complete hop. */
    public long endHop() {
        return hops.endHop();
    }

    /** Highest sample of a hop; −Infinity when it was silent. */
    public double hopPeakDbfs(long hop) {
        return Decibels.ofAmplitude(hops.get(hop, PEAK));
    }

    /** Average level of a hop; −Infinity when it was silent. */
    public double hopRmsDbfs(long hop) {
        return Decibels.ofPower(hops.get(hop, MEAN_SQUARE));
    }

    public void reset() {
        hops.reset();
        filled = 0;
        peak = 0;
        sum = 0;
        sumOfSquares = 0;
        closedFrames = 0;
    }

    private void closeHop() {
        hopSums.of(hop, hop.length);
        peak = Math.max(peak, hopSums.peak);
        sum += hopSums.sum;
        sumOfSquares += hopSums.sumOfSquares;
        closedFrames += hop.length;
        filled = 0;
        long row = hops.append();
        hops.set(row, PEAK, (float) hopSums.peak);
        hops.set(row, MEAN_SQUARE, (float) (hopSums.sumOfSquares / hop.length));
    }

    /** Peak and sums of a stretch of samples, four at a time so that the additions need not wait for each other. */
    private static final class StretchSums {
        private double peak;
        private double sum;
        private double sumOfSquares;

        private void of(float[] x, int frames) {
            double s0 = 0;
            double s1 = 0;
            double s2 = 0;
            double s3 = 0;
            double q0 = 0;
            double q1 = 0;
            double q2 = 0;
            double q3 = 0;
            float high = 0;
            int i = 0;
            for (; i + 3 < frames; i += 4) {
                double x0 = x[i];
                double x1 = x[i + 1];
                double x2 = x[i + 2];
                double x3 = x[i + 3];
                s0 += x0;
                s1 += x1;
                s2 += x2;
                s3 += x3;
                q0 += x0 * x0;
                q1 += x1 * x1;
                q2 += x2 * x2;
                q3 += x3 * x3;
            }
            for (; i < frames; i++) {
                s0 += x[i];
                q0 += (double) x[i] * x[i];
            }
            for (int k = 0; k < frames; k++) {
                float magnitude = Math.abs(x[k]);
                if (magnitude > high) {
                    high = magnitude;
                }
            }
            peak = high;
            sum = s0 + s1 + s2 + s3;
            sumOfSquares = q0 + q1 + q2 + q3;
        }
    }
}
