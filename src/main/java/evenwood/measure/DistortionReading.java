package evenwood.measure;

import java.util.OptionalDouble;

/**
 * Whether the playing was distorted, where in the chain, and from which level on.
 *
 * @param verdict             what is stood behind
 * @param stage               where the tops are lost; {@link Stage#NONE} unless the verdict is ONSET or CLIPPED
 * @param onsetDbfs           the peak level at this tap above which peaks are at least 1 dB short; absent when none was found
 * @param onsetUncertaintyDb  one standard deviation of it; absent with it
 * @param clippedSamples      samples at or beyond the converter's full scale; 0 when it was not overdriven
 * @param probability         0 to 1, that the playing is audibly distorted at all
 * @param evidence            what each detector said
 */
public record DistortionReading(Verdict verdict, Stage stage, OptionalDouble onsetDbfs, OptionalDouble onsetUncertaintyDb,
                                long clippedSamples, double probability, Evidence evidence) {
    /** CLIPPED: the converter's full scale was reached. ONSET: a stage before it overloads. UNSURE: too little to tell. */
    public enum Verdict { CLEAN, ONSET, CLIPPED, UNSURE }

    /** Where the tops are lost. */
    public enum Stage { NONE, CONVERTER, BEFORE_CONVERTER }

    /**
     * What each detector said.
     *
     * @param plateauDbfs    the level at which the wave was cut off exactly flat; −Infinity when nowhere
     * @param plateauRuns    how often it was
     * @param cutProbability 0 to 1, of flat or straight tops and of soft saturation, from the shape of the waves alone
     * @param compressionDb  how much the highest peaks are short, as far as the waves tell; 0 when nothing speaks for it
     */
    public record Evidence(double plateauDbfs, long plateauRuns, double cutProbability, double compressionDb) { }

    /** Nothing heard. */
    public static final DistortionReading SILENCE = new DistortionReading(Verdict.UNSURE, Stage.NONE, OptionalDouble.empty(),
        OptionalDouble.empty(), 0, 0, new Evidence(Double.NEGATIVE_INFINITY, 0, 0, 0));

    public DistortionReading {
        if (!(probability >= 0 && probability <= 1) || clippedSamples < 0 || Double.isNaN(onsetDbfs.orElse(0))) {
            throw new IllegalArgumentException("distortion reading: probability=" + probability + ", clippedSamples="
                + clippedSamples + ", onsetDbfs=" + onsetDbfs + ", but a probability is 0 to 1 and levels are numbers");
        }
        if (onsetDbfs.isPresent() != onsetUncertaintyDb.isPresent()) {
            throw new IllegalArgumentException("distortion reading: onsetDbfs=" + onsetDbfs + ", onsetUncertaintyDb="
                + onsetUncertaintyDb + ", but they are told together");
        }
    }
}
