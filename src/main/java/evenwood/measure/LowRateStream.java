package evenwood.measure;

/**
 * The low end of the sound at a low sample rate: 256 frames a hop, whatever the rate of the take.
 *
 * <p>In: whole hops. Out: {@link #FRAMES_PER_HOP} frames a hop, rate {@link #rateHz()} (5.5 to 8 kHz at the usual
 * rates), true to 0.005 dB up to {@link #topHz()} (2.2 kHz and more at the usual rates).
 * <p>How: half-band decimators in a row, each no longer than it must be.
 * <p>Limits: what folds into the low end is 70 dB down (LowRateStreamTest).
 * <p>Thread: one owner. {@link #accept} never allocates.
 */
final class LowRateStream {
    static final int FRAMES_PER_HOP = 256;
    /** Share of the low rate that is kept clean; what lies above up to half the rate is the filter's slope. */
    private static final double CLEAN_SHARE = 0.4;

    private final HalfBandDecimator[] stages;
    private final float[][] between;
    private final int hopFrames;
    private final double rateHz;

    LowRateStream(HopGrid grid) {
        hopFrames = grid.hopFrames();
        int factor = Math.max(1, hopFrames / FRAMES_PER_HOP);
        int count = Integer.numberOfTrailingZeros(factor);
        rateHz = (double) grid.sampleRateHz() / factor;
        stages = new HalfBandDecimator[count];
        between = new float[count][];
        int frames = hopFrames;
        for (int i = 0; i < count; i++) {
            double stageRateHz = rateHz * (1 << (count - i));
            stages[i] = new HalfBandDecimator(CLEAN_SHARE * rateHz / stageRateHz, frames);
            frames /= 2;
            between[i] = new float[frames];
        }
    }

    double rateHz() {
        return rateHz;
    }

    /** Highest frequency that comes through true. */
    double topHz() {
        return CLEAN_SHARE * rateHz;
    }

    /** Hears the hop that starts at {@code from} and writes its low-rate frames to {@code out} at {@code to}. */
    void accept(float[] in, int from, float[] out, int to) {
        float[] source = in;
        int start = from;
        int frames = hopFrames;
        for (int i = 0; i < stages.length; i++) {
            stages[i].accept(source, start, frames, between[i]);
            source = between[i];
            start = 0;
            frames /= 2;
        }
        System.arraycopy(source, start, out, to, FRAMES_PER_HOP);
    }

    void reset() {
        for (HalfBandDecimator stage : stages) {
            stage.reset();
        }
    }
}
