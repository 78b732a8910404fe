package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OctaveEnergiesTest {
    @ParameterizedTest
    @ValueSource(ints = {8_000, 11_025, 44_100, 48_000, 192_000})
    void aSineInTheMiddleOfAnOctaveShowsThereWithItsMeanSquare(int rate) {
        HopGrid grid = new HopGrid(rate);
        int stepFrames = grid.hopFrames() / AttackSteps.STEPS_PER_HOP;
        OctaveEnergies octaves = new OctaveEnergies(grid, stepFrames);
        for (int octave = 0; octave < octaves.count() - 2; octave++) {
            // The logarithmic middle of the octave whose top is rate/2^(octave+1).
            double hz = rate / Math.pow(2, octave + 1) / Math.sqrt(2);
            double[] sum = new double[octaves.count()];
            double[] step = new double[octaves.count()];
            float[] sound = Signals.sine(rate, 1, hz, 0.5);
            float[] part = new float[stepFrames];
            int steps = 0;
            octaves.reset();
            for (int at = 0; at + stepFrames <= sound.length; at += stepFrames) {
                System.arraycopy(sound, at, part, 0, stepFrames);
                octaves.accept(part, step);
                for (int i = 0; i < sum.length; i++) {
                    sum[i] += step[i];
                }
                steps++;
            }
            assertThat(10 * Math.log10(sum[octave] / steps / 0.125)).as("%f Hz at %d", hz, rate).isCloseTo(0, within(3.0)); // the filters are wide
            for (int other = 0; other < sum.length; other++) {
                assertThat(sum[other]).isLessThanOrEqualTo(sum[octave]);
            }
        }
    }
}
