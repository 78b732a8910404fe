package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import evenwood.takes.FeedbackLoop;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold for any sound, tried on struck tones in a loop that howls from the second second on. */
class RingingMeterPropertyTest {
    private static final int RATE_HZ = 16_000;
    private static final HopGrid GRID = new HopGrid(RATE_HZ);

    static long[] seeds() {
        return LongStream.rangeClosed(1, 50).toArray();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void blockSizeAndPolarityChangeNothing(long seed) {
        float[] sound = howling(seed);
        List<Ring> rings = rings(sound);
        RingingMeter meter = new RingingMeter(GRID);
        Blocks.feedInRandomSizes(sound, seed, new ShortTimeSpectrum(GRID, meter)::accept);
        assertThat(meter.reading().rings()).isEqualTo(rings);
        assertThat(rings(Blocks.scaled(sound, -1))).isEqualTo(rings);
    }

    /** Lines under −100 dBFS are not looked at, so a quieter howl that came from down there may be told a little later. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void gainChangesNoFrequencyAndHardlyAnyTime(long seed) {
        float[] sound = howling(seed);
        List<Ring> rings = rings(sound);
        List<Ring> quieter = rings(Blocks.scaled(sound, 0.25));
        assertThat(quieter).hasSameSizeAs(rings);
        for (int i = 0; i < rings.size(); i++) {
            assertThat(quieter.get(i).toldSeconds()).isCloseTo(rings.get(i).toldSeconds(), within(0.5));
            assertThat(quieter.get(i).frequencyHz()).isCloseTo(rings.get(i).frequencyHz(), withinPercentage(0.5));
        }
    }

    private static float[] howling(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return FeedbackLoop.any(random, RATE_HZ).heard(Blocks.scaled(Blocks.anySound(seed, RATE_HZ, 5), 0.2), 2 * RATE_HZ, random.nextDouble(0.5, 3));
    }

    private static List<Ring> rings(float[] sound) {
        RingingMeter meter = new RingingMeter(GRID);
        Blocks.feed(sound, new ShortTimeSpectrum(GRID, meter)::accept);
        return meter.reading().rings();
    }
}
