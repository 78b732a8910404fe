package evenwood.measure;

import evenwood.sound.AudioBlock;
import evenwood.sound.Decibels;
import evenwood.sound.SoundFormat;
import java.util.OptionalDouble;

/**
 * Hears where the chain runs out of room, in which stage, and from which level on.
 *
 * <p>In: mono frames, full scale ±1.0, any block size. Out: {@link DistortionReading}.
 * <p>How: tops cut at the converter's full scale or at any level the wave returns to ({@link PlateauRuns}).
 * <p>Thread: one owner. {@link #accept} never allocates, locks, logs, or touches files.
 */
public final class DistortionMeter {
    /** A converter may stop a little short of the last code. */
    private static final double FULL_SCALE_TOLERANCE_DB = 0.05;
    private static final int RETURNS_OF_A_CUT = 3;
    /** Where an exactly flat top is cut is known to the sample; 0.1 dB covers a later change of level. */
    private static final double CUT_UNCERTAINTY_DB = 0.1;

    private final PlateauRuns plateaus;
    private long frames;

    /** @param capacityHops how many hops of {@code grid} are remembered */
    public DistortionMeter(SoundFormat format, HopGrid grid, int capacityHops) {
        plateaus = new PlateauRuns(format);
    }

    /** Hears one block and keeps none of it. [audio thread] */
    public void accept(AudioBlock block) {
        plateaus.accept(block.samples(), block.frames());
        frames += block.frames();
    }

    /** What has been heard so far. [owner's thread] */
    public DistortionReading reading() {
        if (frames == 0) {
            return DistortionReading.SILENCE;
        }
        double plateauDbfs = Decibels.ofAmplitude(Math.abs(plateaus.mostRunsValue()));
        DistortionReading.Evidence evidence = new DistortionReading.Evidence(plateauDbfs, plateaus.mostRuns(), 0, 0);
        boolean cut = plateaus.mostRuns() >= RETURNS_OF_A_CUT;
        if (plateaus.clippedSamples() > 0) {
            return told(DistortionReading.Verdict.CLIPPED, DistortionReading.Stage.CONVERTER, 0, plateaus.clippedSamples(), evidence);
        }
        if (cut && plateauDbfs > -FULL_SCALE_TOLERANCE_DB) {
            return told(DistortionReading.Verdict.CLIPPED, DistortionReading.Stage.CONVERTER, plateauDbfs, plateaus.mostRunsSamples(), evidence);
        }
        if (cut) {
            return told(DistortionReading.Verdict.ONSET, DistortionReading.Stage.BEFORE_CONVERTER, plateauDbfs, 0, evidence);
        }
        return new DistortionReading(DistortionReading.Verdict.CLEAN, DistortionReading.Stage.NONE, OptionalDouble.empty(),
            OptionalDouble.empty(), 0, 0, evidence);
    }

    public void reset() {
        plateaus.reset();
        frames = 0;
    }

    private static DistortionReading told(DistortionReading.Verdict verdict, DistortionReading.Stage stage, double onsetDbfs,
                                          long clippedSamples, DistortionReading.Evidence evidence) {
        return new DistortionReading(verdict, stage, OptionalDouble.of(onsetDbfs), OptionalDouble.of(CUT_UNCERTAINTY_DB),
            clippedSamples, 1, evidence);
    }
}
