package evenwood.measure;

import evenwood.sound.AudioBlock;
import evenwood.sound.Decibels;
import java.util.Arrays;

/**
 * How loud the take is to the ear: now, over the last seconds, as a whole, and how far soft and loud lie apart.
 *
 * <p>In: one mono block, or one block a channel, any block size. Out: {@link LoudnessReading}, LUFS and LU.
 * <p>How: mean square of the K-weighted sound ({@link KWeighting}) plus channel weights, gathered every 10 ms.
 * Momentary is the last 400 ms, short-term the last 3 s, both renewed every 10 ms, because with 100 ms the momentary
 * maximum misses bursts by up to 0.45 LU. Integrated: blocks of 400 ms every 100 ms, above −70 LUFS and above their own
 * mean less 10 LU. Range: short-term values every 100 ms, above −70 LUFS and their own mean less 20 LU, from the 10th to
 * the 95th percentile. Source: ITU-R BS.1770-5 Annex 1; EBU Tech 3341 and 3342 (2023).
 * <p>Limits: a mono take is one channel and reads 3.01 LU less than the same sound on two; gates are decided within
 * 0.01 LU; memory does not grow with the take (LoudnessMeterReferenceTest, LoudnessHistogramTest).
 * <p>Thread: one owner. {@link #accept} never allocates, locks, logs, or touches files.
 */
public final class LoudnessMeter {
    /** Cancels the K-weighting's gain at 997 Hz. Source: BS.1770-5 Annex 1 eq. 2. */
    private static final double OFFSET_LU = -0.691;
    /** "+1.5 dB", as printed. Source: BS.1770-5 Annex 1 Table 3. */
    private static final double SURROUND_WEIGHT = 1.41;
    private static final double INTEGRATED_GATE_LU = 10;
    private static final double RANGE_GATE_LU = 20;
    private static final double RANGE_LOW_PERCENT = 10;
    private static final double RANGE_HIGH_PERCENT = 95;
    private static final long RANGE_STABLE_SECONDS = 60;
    /** Silence that follows a finished take before its range is read. Source: EBU Tech 3342 §5. */
    private static final int TRAILING_HOPS = 15;

    private final int sampleRateHz;
    private final KWeighting[] weighting;
    private final double[] channelWeights;
    private final double[] channelSums;
    private final PowerWindows windows;
    private final LoudnessHistogram blocks = new LoudnessHistogram();
    private final LoudnessHistogram shortTerms = new LoudnessHistogram();
    private long frames;
    private long stepEndFrame;
    private double momentaryPower;
    private double maxMomentaryPower;
    private double shortTermPower;
    private double maxShortTermPower;

    /**
     * @param channels 1 to 6, in the order of a WAV file: L; L R; L R C; L R Ls Rs; L R C Ls Rs; L R C LFE Ls Rs
     */
    public LoudnessMeter(int sampleRateHz, int channels) {
        this(sampleRateHz, weightsOf(channels));
    }

    private LoudnessMeter(int sampleRateHz, double[] channelWeights) {
        if (sampleRateHz < PowerWindows.STEPS_PER_SECOND) {
            throw new IllegalArgumentException("loudness meter: sampleRateHz=" + sampleRateHz + ", but at least "
                + PowerWindows.STEPS_PER_SECOND + " is needed");
        }
        this.sampleRateHz = sampleRateHz;
        this.channelWeights = channelWeights;
        windows = new PowerWindows(sampleRateHz);
        channelSums = new double[channelWeights.length];
        weighting = new KWeighting[channelWeights.length];
        Arrays.setAll(weighting, channel -> new KWeighting(sampleRateHz));
        reset();
    }

    /** Loudness of a weighted mean square. */
    static double lufs(double power) {
        return OFFSET_LU + Decibels.ofPower(power);
    }

    /** Hears one mono block and keeps none of it. [audio thread] */
    public void accept(AudioBlock block) {
        requireChannels(1);
        int done = 0;
        while (done < block.frames()) {
            int count = framesToStepEnd(block.frames() - done);
            hear(0, block, done, count);
            done += count;
            advance(count);
        }
    }

    /** Hears one block of each channel, all of the same length, and keeps none of them. [audio thread] */
    public void accept(AudioBlock[] channels) {
        requireChannels(channels.length);
        int blockFrames = channels[0].frames();
        int done = 0;
        while (done < blockFrames) {
            int count = framesToStepEnd(blockFrames - done);
            for (int channel = 0; channel < channels.length; channel++) {
                hear(channel, channels[channel], done, count);
            }
            done += count;
            advance(count);
        }
    }

    /** What has been heard so far. [owner's thread] */
    public LoudnessReading reading() {
        return reading(shortTerms);
    }

    /**
     * The same for a take that is over. Only the range differs: short-term windows look 3 s back, so a live range knows
     * the last seconds less well; for a file 1.5 s of silence is imagined after the last whole 100 ms (EBU Tech 3342
     * §5). Changes nothing in the meter, which may go on hearing. [owner's thread]
     */
    public LoudnessReading readingOfFinishedTake() {
        LoudnessHistogram withTail = new LoudnessHistogram();
        withTail.copyFrom(shortTerms);
        for (int silentHops = 1; silentHops <= TRAILING_HOPS; silentHops++) {
            if (windows.isFullAfterSilence(PowerWindows.SHORT_TERM_HOPS, silentHops)) {
                withTail.add(windows.meanAfterSilence(PowerWindows.SHORT_TERM_HOPS, silentHops));
            }
        }
        return reading(withTail);
    }

    public void reset() {
        for (KWeighting channel : weighting) {
            channel.reset();
        }
        Arrays.fill(channelSums, 0);
        windows.reset();
        blocks.reset();
        shortTerms.reset();
        frames = 0;
        stepEndFrame = endFrame(0);
        momentaryPower = 0;
        maxMomentaryPower = 0;
        shortTermPower = 0;
        maxShortTermPower = 0;
    }

    private LoudnessReading reading(LoudnessHistogram rangeValues) {
        return new LoudnessReading(lufs(momentaryPower), lufs(maxMomentaryPower), lufs(shortTermPower),
            lufs(maxShortTermPower), lufs(blocks.gatedMeanPower(INTEGRATED_GATE_LU)),
            rangeValues.percentileDistanceLu(RANGE_GATE_LU, RANGE_LOW_PERCENT, RANGE_HIGH_PERCENT),
            frames >= RANGE_STABLE_SECONDS * sampleRateHz);
    }

    private int framesToStepEnd(int frames) {
        return (int) Math.min(frames, stepEndFrame - this.frames);
    }

    private void hear(int channel, AudioBlock block, int from, int count) {
        if (channelWeights[channel] > 0) {
            channelSums[channel] = weighting[channel].sumOfSquares(channelSums[channel], block.samples(), from, count);
        }
    }

    private void advance(int count) {
        frames += count;
        if (frames == stepEndFrame) {
            closeStep();
        }
    }

    private void closeStep() {
        double sum = 0;
        for (int channel = 0; channel < channelSums.length; channel++) {
            sum += channelWeights[channel] * channelSums[channel];
            channelSums[channel] = 0;
            weighting[channel].dropLeftovers();
        }
        windows.add(sum);
        stepEndFrame = endFrame(windows.steps());
        if (windows.isFull(PowerWindows.MOMENTARY_HOPS)) {
            renewMomentary();
        }
        if (windows.isFull(PowerWindows.SHORT_TERM_HOPS)) {
            renewShortTerm();
        }
    }

    private void renewMomentary() {
        momentaryPower = windows.mean(PowerWindows.MOMENTARY_HOPS);
        maxMomentaryPower = Math.max(maxMomentaryPower, momentaryPower);
        if (windows.atHopEnd()) {
            blocks.add(momentaryPower);
        }
    }

    private void renewShortTerm() {
        shortTermPower = windows.mean(PowerWindows.SHORT_TERM_HOPS);
        maxShortTermPower = Math.max(maxShortTermPower, shortTermPower);
        if (windows.atHopEnd()) {
            shortTerms.add(shortTermPower);
        }
    }

    /** The frame where a step ends: at rates that are no multiple of 100 Hz steps differ by one frame. */
    private long endFrame(long step) {
        return (step + 1) * sampleRateHz / PowerWindows.STEPS_PER_SECOND;
    }

    private void requireChannels(int heard) {
        if (heard != weighting.length) {
            throw new IllegalArgumentException("loudness meter: channels=" + heard + ", but it was made for "
                + weighting.length);
        }
    }

    private static double[] weightsOf(int channels) {
        return switch (channels) {
            case 1 -> new double[] {1};
            case 2 -> new double[] {1, 1};
            case 3 -> new double[] {1, 1, 1};
            case 4 -> new double[] {1, 1, SURROUND_WEIGHT, SURROUND_WEIGHT};
            case 5 -> new double[] {1, 1, 1, SURROUND_WEIGHT, SURROUND_WEIGHT};
            case 6 -> new double[] {1, 1, 1, 0, SURROUND_WEIGHT, SURROUND_WEIGHT};
            default -> throw new IllegalArgumentException("loudness meter: channels=" + channels
                + ", but 1 to 6 have loudness weights; choose one channel");
        };
    }
}
