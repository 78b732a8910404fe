package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against what a large slow wave does to a small fast one by the characteristic's slope, integrated apart from the meter. */
class TopMomentsReferenceTest {
    private static final int RATE_HZ = 48_000;
    private static final int FRAMES = 4096;
    private static final double SLOW_CYCLES = 6;
    private static final double FAST_CYCLES = 517;
    private static final double FAST = 1e-2;

    @Test
    void inALinearChainTheRippleIsTheSameEverywhere() {
        TopMoments moments = moments(x -> x, 1, 1);
        assertThat(moments.ripple(true)).isCloseTo(0, within(0.05));
        assertThat(moments.ripple(false)).isCloseTo(0, within(0.05));
    }

    /** A sine's mean fourth power is 3/8, its mean square 1/2: half of 3/8 ÷ 1/4 on either side. */
    @Test
    void aSineIsAsPeakedAsItsClosedFormSays() {
        TopMoments moments = moments(x -> x, 1, 0);
        assertThat(moments.peakedness(true)).isCloseTo(Math.log(0.75), within(0.01));
        assertThat(moments.peakedness(false)).isCloseTo(Math.log(0.75), within(0.01));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.6, 1, 2})
    void behindATanhStageTheRippleFallsAsTheSquareOfItsSlope(double drive) {
        TopMoments moments = moments(Math::tanh, drive, 1);
        assertThat(moments.ripple(true)).isCloseTo(expected(drive), within(0.06));
        assertThat(moments.ripple(false)).isCloseTo(expected(drive), within(0.06));
        assertThat(expected(drive)).isNegative();
    }

    @Test
    void aOneSidedStageTakesItFromThatSideAlone() {
        TopMoments moments = moments(x -> x > 0 ? Math.tanh(x) : x, 1, 1);
        assertThat(moments.ripple(true)).isLessThan(moments.ripple(false) - 0.3);
        assertThat(moments.peakedness(true)).isLessThan(moments.peakedness(false) - 0.3);
    }

    @Test
    void levelAndPolarityOnlySwapTheSides() {
        float[] sound = sound(x -> x > 0 ? Math.tanh(x) : x, 1, 1);
        float[] turned = new float[FRAMES];
        for (int i = 0; i < FRAMES; i++) {
            turned[i] = -0.03125f * sound[i];
        }
        TopMoments one = heard(sound);
        TopMoments other = heard(turned);
        assertThat(other.ripple(true)).isCloseTo(one.ripple(false), within(1e-6));
        assertThat(other.peakedness(false)).isCloseTo(one.peakedness(true), within(1e-6));
        assertThat(other.fineDb()).isCloseTo(one.fineDb(), within(1e-5));
        assertThat(other.middleDb()).isCloseTo(one.middleDb(), within(1e-5));
    }

    @Test
    void digitalSilenceIsANumber() {
        TopMoments moments = heard(new float[FRAMES]);
        assertThat(java.util.List.of(moments.ripple(true), moments.peakedness(false), moments.fineDb(), moments.middleDb()))
            .allSatisfy(value -> assertThat(value).isFinite());
    }

    /** ln of mean f'² where the output is high, weighted by its square, over mean f'² of all: trapezoids over one period. */
    private static double expected(double drive) {
        double weighted = 0;
        double weight = 0;
        double all = 0;
        int steps = 100_000;
        for (int i = 0; i < steps; i++) {
            double out = Math.tanh(drive * Math.sin(2 * Math.PI * i / steps));
            double slope = 1 - out * out;
            all += slope * slope / steps;
            weighted += out * out * slope * slope;
            weight += out * out;
        }
        return Math.log(weighted / weight / all);
    }

    private static TopMoments moments(DoubleUnaryOperator curve, double drive, double fast) {
        return heard(sound(curve, drive, fast));
    }

    private static TopMoments heard(float[] sound) {
        TopMoments moments = new TopMoments(RATE_HZ);
        moments.accept(sound, 0);
        return moments;
    }

    private static float[] sound(DoubleUnaryOperator curve, double drive, double fast) {
        float[] sound = new float[FRAMES];
        for (int i = 0; i < FRAMES; i++) {
            double slow = Math.sin(2 * Math.PI * SLOW_CYCLES * i / FRAMES);
            sound[i] = (float) curve.applyAsDouble(drive * (slow + fast * FAST * Math.sin(2 * Math.PI * FAST_CYCLES * i / FRAMES)));
        }
        return sound;
    }
}
