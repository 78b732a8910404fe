package evenwood.measure;

import evenwood.measure.DistortionReading.Evidence;
import evenwood.measure.DistortionReading.Stage;
import evenwood.measure.DistortionReading.Verdict;
import evenwood.sound.AudioBlock;
import evenwood.sound.Decibels;
import evenwood.sound.SoundFormat;
import java.util.OptionalDouble;
import java.util.concurrent.CompletableFuture;

/**
 * Hears where the chain runs out of room, in which stage, and from which level on.
 *
 * <p>In: mono frames, full scale ±1.0, any block size. Out: {@link DistortionReading}.
 * <p>How: three detectors. Tops cut at the converter's full scale, or exactly at any level the wave returns to
 * ({@link PlateauRuns}). Flat or straight tops and soft saturation: the hardest playing compared with quieter playing of
 * the same take ({@link DistortionFeatures}), weighed by {@link DistortionModel}. The onset: where the exact cut stands,
 * or where the tops have become 1 dB short ({@link CompressionCurve}). What reached full scale is the converter's; what
 * stopped below it was stopped before, or digitally in an earlier device.
 * <p>Limits: needs loud and quieter playing, some ten seconds of it; says UNSURE otherwise. A brick-wall limiter looks
 * the same. How often it is right: docs/accuracy.md. Full-scale counts cover everything heard, the shape of the waves
 * all whole stretches of half a hop, the levels the last {@code capacityHops}.
 * <p>Thread: one owner. {@link #accept} never allocates, locks, logs, or touches files.
 */
public final class DistortionMeter {
    /** A converter may stop a little short of the last code. */
    private static final double FULL_SCALE_TOLERANCE_DB = 0.05;
    /** Where an exactly flat top is cut is known to the sample; 0.1 dB covers a later change of level. */
    private static final double CUT_UNCERTAINTY_DB = 0.1;
    /** Spread of the onset found against the true one (docs/accuracy.md): flat tops, and rounded ones. */
    private static final double FLAT_UNCERTAINTY_DB = 0.5;
    private static final double ROUND_UNCERTAINTY_DB = 2;
    private static final double FLAT_SHARE = 0.5;
    private static final double TOLD_PROBABILITY = 0.5;
    private static final double UNSURE_PROBABILITY = 0.25;
    /** Our choice: with less than five seconds within 20 dB of the loudest the model has too little to compare. */
    private static final double FEWEST_PLAYED_SECONDS = 5;
    private static final double PLAYED_RANGE_DB = 20;
    private static final double SOFTEST_PLAYING_DBFS = -70;

    private final CompletableFuture<DistortionModel> model = DistortionModel.shipped();
    private final PlateauRuns plateaus;
    private final TopTable tops = new TopTable();
    private final HalfWaveShapes shapes;
    private final StretchHistory history;
    private final float[] stretch;
    private final double stretchSeconds;
    private int filled;
    private boolean heard;

    /** @param capacityHops how many hops of {@code grid} are remembered */
    public DistortionMeter(SoundFormat format, HopGrid grid, int capacityHops) {
        plateaus = new PlateauRuns(format);
        stretch = new float[grid.hopFrames() / 2];
        stretchSeconds = grid.hopSeconds() / 2;
        shapes = new HalfWaveShapes(stretch.length, tops);
        history = new StretchHistory(Math.multiplyExact(capacityHops, 2), format.sampleRateHz());
    }

    /** Hears one block and keeps none of it. [audio thread] */
    public void accept(AudioBlock block) {
        plateaus.accept(block.samples(), block.frames());
        heard |= block.frames() > 0;
        int done = 0;
        while (done < block.frames()) {
            int count = Math.min(block.frames() - done, stretch.length - filled);
            System.arraycopy(block.samples(), done, stretch, filled, count);
            filled += count;
            done += count;
            if (filled == stretch.length) {
                filled = 0;
                history.accept(stretch);
                shapes.accept(stretch, history);
            }
        }
    }

    /** What has been heard so far; {@link DistortionReading#SILENCE} before the first block. [owner's thread] */
    public DistortionReading reading() {
        if (!heard) {
            return DistortionReading.SILENCE;
        }
        CompressionCurve curve = worseSide();
        double shapeProbability = model.join().probability(features());
        boolean enough = playedSeconds() >= FEWEST_PLAYED_SECONDS;
        double plateauDbfs = Decibels.ofAmplitude(Math.abs(plateaus.cutValue()));
        Evidence evidence = new Evidence(plateauDbfs, plateaus.cutRuns(), shapeProbability, curve.compressionDb());
        boolean cut = plateaus.cutRuns() > 0;
        if (plateaus.clippedSamples() > 0) {
            return cut(Verdict.CLIPPED, Stage.CONVERTER, 0, plateaus.clippedSamples(), evidence);
        }
        if (cut && plateauDbfs > -FULL_SCALE_TOLERANCE_DB) {
            return cut(Verdict.CLIPPED, Stage.CONVERTER, plateauDbfs, plateaus.cutSamples(), evidence);
        }
        if (cut) {
            return cut(Verdict.ONSET, Stage.BEFORE_CONVERTER, plateauDbfs, 0, evidence);
        }
        return fromShapes(curve, enough, evidence);
    }

    public void reset() {
        plateaus.reset();
        tops.reset();
        shapes.reset();
        history.reset();
        filled = 0;
        heard = false;
    }

    /** What the model weighs; for fitting it. */
    double[] features() {
        return DistortionFeatures.of(tops, history.rows());
    }

    private DistortionReading fromShapes(CompressionCurve curve, boolean enough, Evidence evidence) {
        double probability = evidence.cutProbability();
        if (!enough || probability < TOLD_PROBABILITY) {
            Verdict verdict = !enough || probability >= UNSURE_PROBABILITY ? Verdict.UNSURE : Verdict.CLEAN;
            double told = enough ? probability : Math.min(probability, TOLD_PROBABILITY);
            return new DistortionReading(verdict, Stage.NONE, OptionalDouble.empty(), OptionalDouble.empty(), 0, told, evidence);
        }
        boolean reached = curve.onsetDbfs() != Double.POSITIVE_INFINITY;
        double onset = reached ? curve.onsetDbfs() : curve.topDbfs();
        double uncertainty = curve.flatShare() >= FLAT_SHARE ? FLAT_UNCERTAINTY_DB : ROUND_UNCERTAINTY_DB;
        return new DistortionReading(Verdict.ONSET, Stage.BEFORE_CONVERTER, OptionalDouble.of(onset),
            OptionalDouble.of(uncertainty), 0, probability, evidence);
    }

    private static DistortionReading cut(Verdict verdict, Stage stage, double onsetDbfs, long clippedSamples, Evidence evidence) {
        return new DistortionReading(verdict, stage, OptionalDouble.of(onsetDbfs), OptionalDouble.of(CUT_UNCERTAINTY_DB),
            clippedSamples, 1, evidence);
    }

    private CompressionCurve worseSide() {
        CompressionCurve upper = CompressionCurve.of(tops, true);
        CompressionCurve lower = CompressionCurve.of(tops, false);
        return upper.compressionDb() >= lower.compressionDb() ? upper : lower;
    }

    /** Time spent within {@value #PLAYED_RANGE_DB} dB of the loudest stretch. */
    private double playedSeconds() {
        HopHistory rows = history.rows();
        double loudest = SOFTEST_PLAYING_DBFS;
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            loudest = Math.max(loudest, rows.get(row, StretchHistory.RMS_DBFS));
        }
        int played = 0;
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            played += rows.get(row, StretchHistory.RMS_DBFS) > loudest - PLAYED_RANGE_DB ? 1 : 0;
        }
        return played * stretchSeconds;
    }
}
