package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class DemoPerformerTest {
    private static final int RATE_HZ = 48_000;
    private static final double[] SOFT = {2.2, 10};
    private static final double[] USUAL = {12.5, 25};
    private static final double[] HARD = {27.2, 35.5};
    private static final float[] CLEAN = play(RATE_HZ, 1, DemoScenario.clean(), 512);

    @Test
    void theSameSeedPlaysTheSameAndAnotherSeedAnotherWay() {
        assertThat(Arrays.equals(play(RATE_HZ, 1, DemoScenario.clean(), 512), CLEAN)).isTrue();
        assertThat(Arrays.equals(play(RATE_HZ, 2, DemoScenario.clean(), 512), CLEAN)).isFalse();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 37, 480, 8192})
    void theBlockSizeChangesNothing(int blockFrames) {
        assertThat(Arrays.equals(play(RATE_HZ, 1, DemoScenario.clean(), blockFrames), CLEAN)).isTrue();
    }

    @Test
    void itLastsAboutAMinuteAndSaysHowLong() {
        try (DemoPerformer demo = new DemoPerformer(RATE_HZ, 1, DemoScenario.kitchen())) {
            assertThat(demo.lengthFrames()).hasValue(CLEAN.length);
            assertThat(demo.name()).isEqualTo("demo: octave mandolin with a bridge piezo in a kitchen");
        }
        assertThat(CLEAN.length / (double) RATE_HZ).isBetween(50.0, 65.0);
    }

    @ParameterizedTest
    @ValueSource(ints = {8_000, 11_025, 16_000, 44_100, 96_000, 192_000})
    void levelsAgreeBetweenRatesWithinADecibelAsFarAsTheRateHasRoom(int sampleRateHz) {
        float[] other = play(sampleRateHz, 1, DemoScenario.clean(), 512);
        for (double[] phrase : new double[][] {SOFT, USUAL, HARD}) {
            for (double centreHz : new double[] {125, 250, 500, 1000}) {
                double here = Spectra.octaveDb(other, (int) (phrase[0] * sampleRateHz), (int) (phrase[1] * sampleRateHz), sampleRateHz, centreHz);
                double reference = Spectra.octaveDb(CLEAN, (int) (phrase[0] * RATE_HZ), (int) (phrase[1] * RATE_HZ), RATE_HZ, centreHz);
                assertThat(here).as("octave at %.0f Hz from %.0f s", centreHz, phrase[0]).isCloseTo(reference, within(1.0));
            }
        }
        for (float sample : other) {
            assertThat(Float.isFinite(sample)).isTrue();
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void hardIsFifteenToTwentyDecibelsOverSoftWithTheCrestOfAPluckedInstrument(long seed) {
        float[] take = play(RATE_HZ, seed, DemoScenario.clean(), 512);
        assertThat(peak(take, HARD) - peak(take, SOFT)).isBetween(15.0, 21.0);
        assertThat(peak(take, HARD)).isCloseTo(DemoChain.HARDEST_DBFS, within(2.5));
        for (double[] phrase : new double[][] {SOFT, USUAL, HARD}) {
            assertThat(peak(take, phrase) - rms(take, phrase)).as("crest from %.0f s", phrase[0]).isBetween(12.0, 20.5);
        }
    }

    @Test
    void theCleanScenarioIsQuietButNeverDigitallySilent() {
        assertThat(rms(CLEAN, 0.1, 1.9)).isCloseTo(DemoChain.FLOOR_DBFS, within(0.2));
    }

    @Test
    void theFridgeHumsAtTheLevelAsked() {
        float[] take = play(RATE_HZ, 1, DemoScenario.clean().with(DemoFault.FRIDGE_HUM, -45), 512);
        float[] buzz = play(RATE_HZ, 1, DemoScenario.clean().with(DemoFault.FRIDGE_BUZZ, -55), 512);
        assertThat(rms(take, 0, 1.8)).isCloseTo(-45, within(0.15));
        assertThat(rms(buzz, 0, 1.8)).isCloseTo(-55, within(0.15));
        double mainsHz = Spectra.peakHz(take, 0, (int) (1.9 * RATE_HZ), RATE_HZ, 50);
        assertThat(mainsHz).isCloseTo(50.03, within(0.02));
    }

    @Test
    void hissHasTheLevelAsked() {
        assertThat(rms(play(RATE_HZ, 1, DemoScenario.clean().with(DemoFault.HISS), 512), 0, 1.9)).isCloseTo(-58, within(0.2));
    }

    @Test
    void tooHotReachesFullScaleAndTooQuietIsTheSameTakeLower() {
        float[] hot = play(RATE_HZ, 1, DemoScenario.clean().with(DemoFault.TOO_HOT), 512);
        float[] quiet = play(RATE_HZ, 1, DemoScenario.clean().with(DemoFault.TOO_QUIET), 512);
        assertThat(peak(hot, HARD)).isZero();
        assertThat(peak(hot, SOFT)).isLessThan(-6);
        assertThat(rms(quiet, HARD)).isCloseTo(rms(CLEAN, HARD) - DemoFault.TOO_QUIET.usualAmount(), within(0.01));
    }

    @Test
    void thePreampFlattensHardStrumsAndLeavesSoftPlayingAlone() {
        float[] take = play(RATE_HZ, 1, DemoScenario.clean().with(DemoFault.PREAMP_OVERDRIVE, 6), 512);
        assertThat(peak(take, HARD)).isBetween(-16.0, -13.5);
        assertThat(rms(take, SOFT)).isCloseTo(rms(CLEAN, SOFT), within(0.01));
        assertThat(peak(take, SOFT)).isCloseTo(peak(CLEAN, SOFT), within(0.1));
    }

    @Test
    void theRoomLiftsTheAirModeAndNotTheTop() {
        float[] take = play(RATE_HZ, 1, DemoScenario.clean().with(DemoFault.BOOM, 8), 512);
        int from = (int) (USUAL[0] * RATE_HZ);
        int to = (int) (USUAL[1] * RATE_HZ);
        assertThat(Spectra.octaveDb(take, from, to, RATE_HZ, 150) - Spectra.octaveDb(CLEAN, from, to, RATE_HZ, 150)).isBetween(5.5, 8.0);
        assertThat(Spectra.octaveDb(take, from, to, RATE_HZ, 3000) - Spectra.octaveDb(CLEAN, from, to, RATE_HZ, 3000)).isCloseTo(0, within(0.5));
    }

    @Test
    void theBadJackClicksAndThePhoneBurstsInTheQuiet() {
        float[] jack = play(RATE_HZ, 1, DemoScenario.clean().with(DemoFault.CRACKLE, 8), 512);
        float[] phone = play(RATE_HZ, 1, DemoScenario.clean().with(DemoFault.PHONE), 512);
        assertThat(Spectra.peakDb(jack, 0, 2 * RATE_HZ - 1000)).isBetween(-40.0, -15.0);
        assertThat(Spectra.peakDb(phone, 0, RATE_HZ / 2)).isLessThan(-60);
        assertThat(Spectra.peakDb(phone, RATE_HZ, 2 * RATE_HZ - 1000)).isCloseTo(-34, within(1.0));
    }

    @ParameterizedTest
    @EnumSource(DemoFault.class)
    void everyFaultCanBeSwitchedInAndOutAndChangesTheTake(DemoFault fault) {
        DemoScenario with = DemoScenario.clean().with(fault);
        float[] take = play(16_000, 3, with, 512);
        assertThat(with.without(fault)).isEqualTo(DemoScenario.clean());
        assertThat(Arrays.equals(take, play(16_000, 3, DemoScenario.clean(), 512))).isFalse();
        for (float sample : take) {
            assertThat(Math.abs(sample)).isLessThanOrEqualTo(1f);
        }
    }

    @Test
    void readingAllocatesNothing() {
        DemoPerformer demo = new DemoPerformer(RATE_HZ, 1, DemoScenario.kitchen().with(DemoFault.CRACKLE).with(DemoFault.PHONE));
        AudioBlock block = new AudioBlock(512);
        for (int i = 0; i < 1500; i++) {
            demo.read(block);
        }
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        threads.getCurrentThreadAllocatedBytes();
        long before = threads.getCurrentThreadAllocatedBytes();
        for (int i = 0; i < 3000; i++) {
            demo.read(block);
        }
        assertThat(threads.getCurrentThreadAllocatedBytes() - before).isZero();
    }

    static float[] play(int sampleRateHz, long seed, DemoScenario scenario, int blockFrames) {
        try (DemoPerformer demo = new DemoPerformer(sampleRateHz, seed, scenario)) {
            float[] take = new float[(int) demo.lengthFrames().orElseThrow()];
            AudioBlock block = new AudioBlock(blockFrames);
            for (int frames = demo.read(block); frames > 0; frames = demo.read(block)) {
                System.arraycopy(block.samples(), 0, take, (int) block.startFrame(), frames);
            }
            return take;
        }
    }

    private static double peak(float[] take, double[] phrase) {
        return Spectra.peakDb(take, (int) (phrase[0] * RATE_HZ), (int) (phrase[1] * RATE_HZ));
    }

    private static double rms(float[] take, double... phrase) {
        return Spectra.rmsDb(take, (int) (phrase[0] * RATE_HZ), (int) (phrase[1] * RATE_HZ));
    }
}
