package evenwood.eq;

import evenwood.measure.BiquadCoefficients;
import evenwood.sound.AudioBlock;
import java.util.List;

/**
 * Lets sound pass an {@link EqChain}.
 *
 * <p>In and out: the same mono block, changed in place; may leave full scale, nothing is clipped here.
 * <p>How: transposed direct form II in double precision, section after section.
 * <p>Thread: one owner. {@link #process} never allocates.
 */
public final class EqProcessor {
    private final double gain;
    private final double[] b0;
    private final double[] b1;
    private final double[] b2;
    private final double[] a1;
    private final double[] a2;
    private final double[] s1;
    private final double[] s2;

    public EqProcessor(EqChain chain, double sampleRateHz) {
        List<BiquadCoefficients> sections = chain.sections(sampleRateHz);
        gain = Math.pow(10, chain.gainDb() / 20);
        int n = sections.size();
        b0 = sections.stream().mapToDouble(BiquadCoefficients::b0).toArray();
        b1 = sections.stream().mapToDouble(BiquadCoefficients::b1).toArray();
        b2 = sections.stream().mapToDouble(BiquadCoefficients::b2).toArray();
        a1 = sections.stream().mapToDouble(BiquadCoefficients::a1).toArray();
        a2 = sections.stream().mapToDouble(BiquadCoefficients::a2).toArray();
        s1 = new double[n];
        s2 = new double[n];
    }

    /** [audio thread] */
    public void process(AudioBlock block) {
        process(block.samples(), block.frames());
    }

    /** The same on a plain array. */
    public void process(float[] samples, int frames) {
        for (int i = 0; i < frames; i++) {
            double x = gain * samples[i];
            for (int k = 0; k < b0.length; k++) {
                double y = b0[k] * x + s1[k];
                s1[k] = b1[k] * x - a1[k] * y + s2[k];
                s2[k] = b2[k] * x - a2[k] * y;
                x = y;
            }
            samples[i] = (float) x;
        }
    }
}
