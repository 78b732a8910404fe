package evenwood.live;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.measure.Allocation;
import evenwood.sound.AudioBlock;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SignalPresenceTest {
    private static final float LAST_BIT_OF_24 = 1 / 8388608f;
    private static final float LAST_BIT_OF_16 = 1 / 32768f;

    @ParameterizedTest(name = "{0} Hz")
    @ValueSource(ints = {8_000, 44_100, 48_000, 192_000})
    void zerosAreToldWithinTwoSecondsAndNotAtOnce(int rateHz) {
        SignalPresence presence = new SignalPresence(rateHz);
        hear(presence, new float[rateHz]);
        assertThat(presence.reading()).isEqualTo(SignalReading.NOT_YET_KNOWN);
        hear(presence, new float[rateHz * 9 / 10]);
        assertThat(presence.reading()).isEqualTo(SignalReading.EXACT_ZEROS);
        assertThat(presence.reading().isDead()).isTrue();
    }

    @Test
    void oneValueForEverIsStuck() {
        SignalPresence presence = new SignalPresence(48_000);
        float[] stuck = new float[80_000];
        Arrays.fill(stuck, -0.25f);
        hear(presence, stuck);
        assertThat(presence.reading()).isEqualTo(new SignalReading(SignalReading.Kind.STUCK, -0.25f));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void noiseOfTheLastBitIsAQuietPlayer(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (float step : new float[] {LAST_BIT_OF_16, LAST_BIT_OF_24}) {
            SignalPresence presence = new SignalPresence(48_000);
            float[] dither = new float[480_000];
            for (int i = 0; i < dither.length; i++) {
                dither[i] = step * random.nextInt(-1, 2);
            }
            hear(presence, dither);
            assertThat(presence.reading()).isEqualTo(SignalReading.ALIVE);
        }
    }

    /** A sixteen-bit input whose noise is so low that the last bit tips only once a second. */
    @Test
    void oneBitOnceASecondIsStillAlive() {
        SignalPresence presence = new SignalPresence(48_000);
        float[] hardly = new float[480_000];
        for (int i = 0; i < hardly.length; i += 48_000) {
            hardly[i] = LAST_BIT_OF_16;
        }
        hear(presence, hardly);
        assertThat(presence.reading()).isEqualTo(SignalReading.ALIVE);
    }

    @Test
    void anInputThatIsMutedInTheMiddleIsToldAndForgivenWhenItReturns() {
        SignalPresence presence = new SignalPresence(48_000);
        hear(presence, noise(48_000));
        assertThat(presence.reading()).isEqualTo(SignalReading.ALIVE);
        hear(presence, new float[96_000]);
        assertThat(presence.reading()).isEqualTo(SignalReading.EXACT_ZEROS);
        hear(presence, noise(10));
        assertThat(presence.reading()).isEqualTo(SignalReading.ALIVE);
    }

    @Test
    void blockSizeDoesNotMatter() {
        for (int blockFrames : new int[] {1, 7, 512, 8192}) {
            SignalPresence presence = new SignalPresence(8_000);
            hear(presence, noise(100), blockFrames);
            hear(presence, new float[11_999], blockFrames);
            assertThat(presence.reading()).as("block of %d, one frame early", blockFrames).isEqualTo(SignalReading.ALIVE);
            hear(presence, new float[1], blockFrames);
            assertThat(presence.reading()).as("block of %d", blockFrames).isEqualTo(SignalReading.EXACT_ZEROS);
        }
    }

    @Test
    void resetForgets() {
        SignalPresence presence = new SignalPresence(8_000);
        hear(presence, new float[16_000]);
        presence.reset();
        assertThat(presence.reading()).isEqualTo(SignalReading.NOT_YET_KNOWN);
        hear(presence, new float[8_000]);
        assertThat(presence.reading()).isEqualTo(SignalReading.NOT_YET_KNOWN);
    }

    @Test
    void hearingAllocatesNothing() {
        SignalPresence presence = new SignalPresence(48_000);
        assertThat(Allocation.bytesOf(presence::accept)).isLessThan(1_000);
    }

    private static float[] noise(int frames) {
        SplittableRandom random = new SplittableRandom(9);
        float[] noise = new float[frames];
        for (int i = 0; i < frames; i++) {
            noise[i] = (float) random.nextDouble(-0.1, 0.1);
        }
        noise[frames - 1] = 0.05f;
        return noise;
    }

    private static void hear(SignalPresence presence, float[] samples) {
        hear(presence, samples, 512);
    }

    private static void hear(SignalPresence presence, float[] samples, int blockFrames) {
        for (int at = 0; at < samples.length; at += blockFrames) {
            presence.accept(AudioBlock.of(at, Arrays.copyOfRange(samples, at, Math.min(samples.length, at + blockFrames))));
        }
    }
}
