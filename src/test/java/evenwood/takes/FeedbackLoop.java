package evenwood.takes;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.complex.Complex;

/**
 * A loudspeaker that is heard by the pickup again: delay, a room of several modes, gain, and an amplifier that cannot
 * give more than full scale.
 *
 * <p>How: heard[n] = played[n] + limit(gain · room(heard[n − delay])). The gain that makes the strongest zero-phase
 * frequency circulate with gain 1 is the threshold of howling (project reference §10.1); the margin is dB above it.
 * The truth (frequency, growth) is the pole of the linear loop, found by Newton's method, not by any meter.
 */
public final class FeedbackLoop {
    /** A resonance of the room and the instrument's body. */
    public record Mode(double frequencyHz, double q, double gainDb) { }

    /** @param growthDbPerSecond negative below the threshold */
    public record Truth(double frequencyHz, double growthDbPerSecond) { }

    private static final double LOWEST_HZ = 80;
    private static final double HIGHEST_HZ = 8_000;
    /** A hundredth of the distance of zero-phase frequencies at the longest delay; over it a mode hardly changes. */
    private static final double STEP_HZ = 0.25;

    private final int sampleRateHz;
    private final int delayFrames;
    private final double[][] sections;
    private double thresholdGain;
    private double criticalHz;

    public FeedbackLoop(int sampleRateHz, double delaySeconds, List<Mode> modes) {
        this.sampleRateHz = sampleRateHz;
        delayFrames = Math.max(1, (int) Math.round(delaySeconds * sampleRateHz));
        sections = modes.stream().map(mode -> bandPass(mode, sampleRateHz)).toArray(double[][]::new);
        findThreshold();
    }

    /** A room by chance: one strong mode from 150 Hz to 4 kHz, five weaker ones, 3 to 30 ms of delay. */
    public static FeedbackLoop any(SplittableRandom random, int sampleRateHz) {
        return around(150 * Math.pow(4000 / 150.0, random.nextDouble()), random, sampleRateHz);
    }

    /** The same with the strong mode at a given frequency. */
    public static FeedbackLoop around(double frequencyHz, SplittableRandom random, int sampleRateHz) {
        List<Mode> modes = new ArrayList<>();
        modes.add(new Mode(frequencyHz, random.nextDouble(8, 40), 0));
        for (int i = 0; i < 5; i++) {
            modes.add(new Mode(150 * Math.pow(30, random.nextDouble()), random.nextDouble(5, 30), random.nextDouble(-14, -6)));
        }
        return new FeedbackLoop(sampleRateHz, random.nextDouble(0.003, 0.03), modes);
    }

    /** What the pickup hears: up to {@code fromFrame} the loop is 6 dB below the threshold, then {@code marginDb} above it. */
    public float[] heard(float[] played, int fromFrame, double marginDb) {
        float[] heard = new float[played.length];
        double[][] state = new double[sections.length][2];
        for (int n = 0; n < played.length; n++) {
            double gain = thresholdGain * Math.pow(10, (n < fromFrame ? -6 : marginDb) / 20);
            double x = n < delayFrames ? 0 : heard[n - delayFrames];
            double room = 0;
            for (int i = 0; i < sections.length; i++) {
                double[] c = sections[i];
                double[] s = state[i];
                double y = c[0] * x + s[0];
                s[0] = s[1] - c[1] * y;
                s[1] = -c[0] * x - c[2] * y;
                room += y;
            }
            heard[n] = (float) (played[n] + Math.tanh(gain * room));
        }
        return heard;
    }

    /** Where and how fast it grows at this margin. */
    public Truth truth(double marginDb) {
        double gain = thresholdGain * Math.pow(10, marginDb / 20);
        Complex z = unit(criticalHz);
        for (int i = 0; i < 60; i++) {
            Complex f = loop(z).multiply(-gain).add(1);
            Complex slope = loop(z.multiply(1 + 1e-7)).multiply(-gain).add(1).subtract(f).divide(z.multiply(1e-7));
            z = z.subtract(f.divide(slope));
        }
        return new Truth(z.getArgument() / (2 * Math.PI) * sampleRateHz, 20 * Math.log10(z.norm()) * sampleRateHz);
    }

    private void findThreshold() {
        double strongest = 0;
        Complex before = loop(unit(LOWEST_HZ));
        for (double hz = LOWEST_HZ; hz < Math.min(HIGHEST_HZ, 0.4 * sampleRateHz); hz += STEP_HZ) {
            Complex now = loop(unit(hz));
            boolean zeroPhase = now.getReal() > 0 && Math.signum(now.getImaginary()) != Math.signum(before.getImaginary());
            if (zeroPhase && now.norm() > strongest) {
                strongest = now.norm();
                criticalHz = hz;
            }
            before = now;
        }
        thresholdGain = 1 / strongest;
    }

    private Complex loop(Complex z) {
        Complex sum = Complex.ZERO;
        Complex z1 = z.reciprocal();
        Complex z2 = z1.multiply(z1);
        for (double[] c : sections) {
            sum = sum.add(z2.negate().add(1).multiply(c[0]).divide(z1.multiply(c[1]).add(z2.multiply(c[2])).add(1)));
        }
        double turned = -delayFrames * z.getArgument();
        double shrunk = Math.pow(z.norm(), -delayFrames);
        return sum.multiply(new Complex(shrunk * Math.cos(turned), shrunk * Math.sin(turned)));
    }

    private Complex unit(double hz) {
        double radians = 2 * Math.PI * hz / sampleRateHz;
        return new Complex(Math.cos(radians), Math.sin(radians));
    }

    /** Audio EQ cookbook band-pass, constant peak gain. */
    private static double[] bandPass(Mode mode, int sampleRateHz) {
        double omega = 2 * Math.PI * mode.frequencyHz / sampleRateHz;
        double alpha = Math.sin(omega) / (2 * mode.q);
        double gain = Math.pow(10, mode.gainDb / 20) * alpha / (1 + alpha);
        return new double[] {gain, -2 * Math.cos(omega) / (1 + alpha), (1 - alpha) / (1 + alpha)};
    }
}
