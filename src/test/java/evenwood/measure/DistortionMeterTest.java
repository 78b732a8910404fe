package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.measure.DistortionReading.Stage;
import evenwood.measure.DistortionReading.Verdict;
import evenwood.sound.SoundFormat;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DistortionMeterTest {
    private static final int RATE_HZ = 48_000;

    @ParameterizedTest
    @CsvSource({"8, 0.5", "16, 0.5", "16, 3", "24, 0.5", "24, 12", "32, 3"})
    void everySampleAtTheConvertersLastCodesIsCounted(int bits, double overDb) {
        float[] sound = decayingTones(overDb);
        double codes = Math.pow(2, bits - 1);
        long atTheLimit = 0;
        for (int i = 0; i < sound.length; i++) {
            double code = Math.rint(sound[i] * codes);
            double held = Math.max(-codes, Math.min(codes - 1, code));
            atTheLimit += held == -codes || held == codes - 1 ? 1 : 0;
            sound[i] = (float) (held / codes);
        }
        DistortionReading reading = read(sound, bits);
        assertThat(reading.clippedSamples()).isEqualTo(atTheLimit).isGreaterThan(10);
        assertThat(reading.verdict()).isEqualTo(Verdict.CLIPPED);
        assertThat(reading.stage()).isEqualTo(Stage.CONVERTER);
        assertThat(reading.onsetDbfs()).hasValue(0);
        assertThat(reading.probability()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(ints = {8, 16, 24})
    void theSlowTopOfALowNoteThatJustReachesFullScaleIsNotCut(int bits) {
        double codes = Math.pow(2, bits - 1);
        float[] sound = new float[RATE_HZ];
        for (int i = 0; i < sound.length; i++) {
            sound[i] = (float) (Math.min(codes - 1, Math.rint(codes * Math.sin(2 * Math.PI * 41.2 * i / RATE_HZ))) / codes);
        }
        assertThat(read(sound, bits).clippedSamples()).isZero();
        assertThat(read(sound, bits).evidence().plateauRuns()).isZero();
    }

    @ParameterizedTest
    @CsvSource({"2, -6", "3, -6", "3, -20"})
    void topsCutBelowFullScaleAreAStageBeforeTheConverter(double overDb, double limitDbfs) {
        float[] sound = decayingTones(overDb);
        float gain = (float) Math.pow(10, limitDbfs / 20);
        for (int i = 0; i < sound.length; i++) {
            sound[i] = (float) (Math.rint(gain * Math.max(-1, Math.min(1, sound[i])) * 32768) / 32768);
        }
        DistortionReading reading = read(sound, 16);
        assertThat(reading.verdict()).as("%s", reading).isEqualTo(Verdict.ONSET);
        assertThat(reading.stage()).isEqualTo(Stage.BEFORE_CONVERTER);
        assertThat(reading.clippedSamples()).isZero();
        assertThat(reading.onsetDbfs().orElseThrow()).isCloseTo(limitDbfs, within(0.1));
    }

    @Test
    void floatsBeyondFullScaleAreClippedWhereverTheyGoNext() {
        float[] sound = decayingTones(2);
        long beyond = 0;
        for (float x : sound) {
            beyond += Math.abs(x) >= 1 ? 1 : 0;
        }
        assertThat(read(sound, 0).clippedSamples()).isEqualTo(beyond);
    }

    @Test
    void onePeakAtFullScaleIsAWellUsedConverter() {
        float[] sound = decayingTones(0);
        for (int i = 0; i < sound.length; i++) {
            sound[i] = (float) (Math.min(32767, Math.rint(sound[i] * 32768)) / 32768);
        }
        assertThat(read(sound, 16).clippedSamples()).isZero();
        assertThat(read(sound, 16).verdict()).isNotEqualTo(Verdict.CLIPPED);
    }

    /** A soft take in a coarse format: many tops share a value by chance. */
    @ParameterizedTest
    @ValueSource(ints = {8, 12, 16})
    void topsThatShareACodeByChanceAreNotCut(int bits) {
        for (long seed = 1; seed <= 20; seed++) {
            float[] sound = Blocks.scaled(Blocks.anySound(seed, RATE_HZ, 20), 0.1);
            double codes = Math.pow(2, bits - 1);
            for (int i = 0; i < sound.length; i++) {
                sound[i] = (float) (Math.rint(sound[i] * codes) / codes);
            }
            assertThat(read(sound, bits).evidence().plateauRuns()).as("seed %d", seed).isZero();
        }
    }

    @Test
    void aClickAboveTheCutDoesNotHideIt() {
        float[] sound = decayingTones(6);
        for (int i = 0; i < sound.length; i++) {
            sound[i] = (float) (Math.rint(0.3 * Math.max(-1, Math.min(1, sound[i])) * 32768) / 32768);
        }
        sound[RATE_HZ] = 0.6f;
        DistortionReading reading = read(sound, 16);
        assertThat(reading.stage()).isEqualTo(Stage.BEFORE_CONVERTER);
        assertThat(reading.onsetDbfs().orElseThrow()).isCloseTo(20 * Math.log10(0.3), within(0.1));
    }

    /** A telephone code knows no zero: its smallest step, where soft sound stays for samples on end, is no ceiling (ITU-T G.711). */
    @Test
    void theSmallestStepOfATelephoneCodeIsNoCut() {
        float[] sound = decayingTones(-6);
        SplittableRandom random = new SplittableRandom(6);
        for (int i = 0; i < sound.length; i++) {
            double inRest = i % (2 * RATE_HZ) < RATE_HZ ? sound[i] : 0.0002 * random.nextGaussian();
            sound[i] = (float) ((Math.floor(inRest * 2048) + 0.5) / 2048);
        }
        assertThat(read(sound, 0).evidence().plateauRuns()).isZero();
    }

    @Test
    void silenceIsNotJudged() {
        assertThat(read(new float[0], 16)).isEqualTo(DistortionReading.SILENCE);
    }

    /** Struck tones of three harmonics, 80 to 1200 Hz, whose highest peak would be so many dB over full scale. */
    private static float[] decayingTones(double overDb) {
        SplittableRandom random = new SplittableRandom(5);
        float[] sound = new float[6 * RATE_HZ];
        for (int start = 0; start < sound.length; start += RATE_HZ / 4) {
            double omega = 2 * Math.PI * 80 * Math.pow(15, random.nextDouble()) / RATE_HZ;
            double amplitude = random.nextDouble(0.2, 1);
            for (int i = start; i < sound.length; i++) {
                double t = omega * (i - start);
                double wave = Math.sin(t) + 0.5 * Math.sin(2 * t + 1) + 0.3 * Math.sin(3 * t + 2);
                sound[i] += (float) (amplitude * Math.exp((start - i) / (0.3 * RATE_HZ)) * wave);
            }
        }
        double peak = 0;
        for (float x : sound) {
            peak = Math.max(peak, Math.abs(x));
        }
        return Blocks.scaled(sound, Math.pow(10, overDb / 20) / peak);
    }

    private static DistortionReading read(float[] sound, int bits) {
        DistortionMeter meter = new DistortionMeter(new SoundFormat(RATE_HZ, 1, 1, bits), new HopGrid(RATE_HZ), 1000);
        Blocks.feed(sound, meter::accept);
        return meter.reading();
    }
}
