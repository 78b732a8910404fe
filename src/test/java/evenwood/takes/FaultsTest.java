package evenwood.takes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class FaultsTest {
    private static final int RATE_HZ = 48_000;

    /** Hard-clipped sine, closed form (project reference §5.2): overdrive dB → THD_F %. 50 Hz, so aliases are negligible. */
    @ParameterizedTest
    @CsvSource({"0.5, 2.189", "1, 4.632", "3, 13.380", "6, 23.237", "12, 35.369"})
    void aClippedSineHasTheDistortionOfTheClosedForm(double overDb, double thdPercent) {
        float[] sine = sine(0.5, 50, 2);
        for (Overdrive.Reality reality : Overdrive.Reality.values()) {
            float[] out = Faults.stageClip(sine, RATE_HZ, overDb, 0, 0, reality).samples();
            assertThat(thdPercent(out, 50)).as("%s", reality).isCloseTo(thdPercent, within(0.005 * thdPercent + 0.01));
        }
        float[] out = Faults.converterClip(sine, overDb, 24).samples();
        assertThat(thdPercent(out, 50)).isCloseTo(thdPercent, within(0.005 * thdPercent + 0.01));
    }

    /** tanh(g·sin θ), project reference §5.3: g = 1 → THD_F 6.7065 %, and its peak is tanh(1)/1 = −2.366 dB short. */
    @Test
    void aSoftStageIsDrivenByTheDecibelsItsHardestPeakIsShort() {
        float[] sine = sine(0.5, 50, 2);
        double drive = -20 * Math.log10(Math.tanh(1));
        Injected<Overdrive.Truth> bent = Faults.saturation(sine, RATE_HZ, Overdrive.Curve.TANH, drive, 0, Overdrive.Reality.SAMPLED);
        assertThat(thdPercent(bent.samples(), 50)).isCloseTo(6.7065, within(0.01));
        for (Overdrive.Curve curve : Overdrive.Curve.values()) {
            Injected<Overdrive.Truth> soft = Faults.saturation(sine, RATE_HZ, curve, 2, 0, Overdrive.Reality.SAMPLED);
            assertThat(20 * Math.log10(highest(soft.samples()) / 0.5)).as("%s", curve).isCloseTo(-2, within(0.01));
        }
    }

    @ParameterizedTest
    @EnumSource(Overdrive.Curve.class)
    void aSinePeakingAtTheOnsetIsOneDecibelShort(Overdrive.Curve curve) {
        float[] sine = sine(0.5, 50, 2);
        double onset = Faults.saturation(sine, RATE_HZ, curve, 4, 0, Overdrive.Reality.SAMPLED).truth().onsetDbfs();
        double exact = Faults.saturation(sine, RATE_HZ, curve, 1, 0, Overdrive.Reality.SAMPLED).truth().onsetDbfs();
        assertThat(exact).isCloseTo(20 * Math.log10(0.5) - 1, within(1e-6));
        assertThat(onset).isLessThan(exact);
    }

    @Test
    void quietPlayingPassesASoftStageUnchanged() {
        float[] take = sine(0.5, 50, 2);
        for (int i = take.length / 2; i < take.length; i++) {
            take[i] *= 0.001f;
        }
        float[] out = Faults.saturation(take, RATE_HZ, Overdrive.Curve.DIODE, 6, 0, Overdrive.Reality.SAMPLED).samples();
        for (int i = take.length / 2; i < take.length; i++) {
            assertThat(out[i]).isCloseTo(take[i], within(1e-5f));
        }
    }

    @ParameterizedTest
    @CsvSource({"20", "100", "1000", "10000", "18000"})
    void theAnalogueStageIsTransparentBelowItsLimit(double hz) {
        float[] sine = sine(0.25, hz, 1);
        float[] out = FourTimesRate.shape(sine, x -> x);
        for (int i = 1000; i < out.length - 1000; i++) {
            assertThat(out[i]).isCloseTo(sine[i], within(3e-5f));
        }
    }

    @Test
    void aConverterStopsAtItsLastCodesAndCountsThem() {
        float[] out = Faults.converterClip(sine(0.1, 997, 1), 3, 16).samples();
        long counted = 0;
        for (float x : out) {
            assertThat(x * 32768.0).isEqualTo(Math.rint(x * 32768.0)).isBetween(-32768.0, 32767.0);
            counted += x == -1 || x == 32767 / 32768f ? 1 : 0;
        }
        Injected<Overdrive.Truth> again = Faults.converterClip(sine(0.1, 997, 1), 3, 16);
        assertThat(counted).isEqualTo(again.truth().clippedSamples()).isGreaterThan(RATE_HZ / 3);
    }

    @Test
    void aOneSidedStageLeavesTheOtherSideAlone() {
        float[] sine = sine(0.5, 200, 1);
        float[] out = Faults.oneSidedClip(sine, RATE_HZ, 4, 0, Overdrive.Reality.SAMPLED).samples();
        double lowest = 0;
        for (float x : out) {
            lowest = Math.min(lowest, x);
        }
        assertThat(20 * Math.log10(highest(out))).isCloseTo(-10.02, within(0.01));
        assertThat(lowest).isCloseTo(-0.5, within(1e-4));
    }

    /** Project reference §8.2, dB against the strongest. */
    @ParameterizedTest
    @CsvSource({"RECTIFIER, 2, 4, -14.0", "DIMMER, 1, 3, -5.4", "DIMMER, 1, 5, -14.9", "DIMMER, 1, 7, -14.9", "DIMMER, 1, 9, -19.4",
        "DIMMER, 1, 19, -24.5", "CHARGING, 1, 3, -0.5", "CHARGING, 1, 7, -2.8", "CHARGING, 1, 11, -7.7", "CHARGING, 1, 19, -30.8"})
    void theHarmonicsOfEachOriginAreThoseOfItsIdealWave(Mains.Origin origin, int strongest, int harmonic, double db) {
        double[] series = Mains.series(origin);
        assertThat(20 * Math.log10(series[harmonic - 1] / series[strongest - 1])).isCloseTo(db, within(0.06));
    }

    @ParameterizedTest
    @EnumSource(Mains.Origin.class)
    void humAndBuzzMeasureAsToldByALongTransform(Mains.Origin origin) {
        float[] silence = new float[10 * RATE_HZ];
        Injected<Mains.Truth> injected = Faults.mains(silence, RATE_HZ, origin, 60.2, 0, -50, 3);
        double hum = 0;
        double buzz = 0;
        for (int k = 1; k <= 40; k++) {
            double power = Math.pow(amplitude(injected.samples(), k * 60.2), 2) / 2;
            hum += k <= 5 ? power : 0;
            buzz += k > 5 ? power : 0;
        }
        assertThat(10 * Math.log10(hum + buzz)).isCloseTo(-50, within(0.01));
        assertThat(origin == Mains.Origin.RASP ? -200 : 10 * Math.log10(hum)).isCloseTo(Math.max(-200, injected.truth().humDbfs()), within(0.01));
        assertThat(Math.max(-200, origin == Mains.Origin.MAGNETIC ? -200 : 10 * Math.log10(buzz))).isCloseTo(Math.max(-200, injected.truth().buzzDbfs()), within(0.01));
        assertThat(injected.truth().mainsHz()).isCloseTo(60.2, within(1e-6));
    }

    @Test
    void hissHasTheLevelAskedAndPinkHissFallsThreeDecibelsAnOctave() {
        float[] white = Faults.hiss(new float[1 << 19], RATE_HZ, -60, 0, 5).samples();
        float[] pink = Faults.hiss(new float[1 << 19], RATE_HZ, -60, 1, 5).samples();
        assertThat(10 * Math.log10(power(white))).isCloseTo(-60, within(0.01));
        assertThat(10 * Math.log10(power(pink))).isCloseTo(-60, within(0.01));
        double octaves = Math.log(2000 / 125.0) / Math.log(2);
        double fall = band(pink, 125) - band(pink, 2000);
        assertThat(fall / octaves).isCloseTo(3.0, within(0.5));
        assertThat(band(white, 125) - band(white, 2000)).isCloseTo(0, within(0.7));
    }

    @ParameterizedTest
    @CsvSource({"USB_FRAMES, 1000", "USB_MICROFRAMES, 8000", "SCREEN_LINES, 15625"})
    void steadyTonesStandWhereTheyShouldAtTheLevelAsked(Tones.Kind kind, double hz) {
        float[] out = Faults.tone(new float[2 * RATE_HZ], RATE_HZ, kind, -70, 9).samples();
        assertThat(20 * Math.log10(amplitude(out, hz) / Math.sqrt(2))).isCloseTo(-70, within(0.01));
    }

    @Test
    void switchModeWhineWandersAndKeepsItsLevel() {
        Injected<Tones.Truth> whine = Faults.tone(new float[20 * RATE_HZ], RATE_HZ, Tones.Kind.SWITCH_MODE, -70, 9);
        assertThat(10 * Math.log10(power(whine.samples()))).isCloseTo(-70, within(0.01));
        assertThat(20 * Math.log10(amplitude(whine.samples(), whine.truth().frequencyHz()) / Math.sqrt(2))).isLessThan(-80);
    }

    @Test
    void aPhoneBuzzesAtItsFrameRate() {
        Injected<Tones.Truth> phone = Faults.phone(new float[12 * RATE_HZ], RATE_HZ, -40, 1);
        assertThat(phone.truth().frequencyHz()).isCloseTo(216.7, within(0.1));
        assertThat(20 * Math.log10(highest(phone.samples()))).isCloseTo(-40, within(0.1));
        assertThat(phone.truth().levelDbfs()).isBetween(-60.0, -50.0);
    }

    @Test
    void clicksComeAtTheRateAskedAndAsStrongAsTold() {
        Injected<List<Interruptions.Spot>> crackle = Faults.crackle(new float[60 * RATE_HZ], RATE_HZ, 5, -20, 2);
        assertThat(crackle.truth()).hasSizeBetween(200, 340);
        for (Interruptions.Spot click : crackle.truth()) {
            assertThat((double) Math.abs(crackle.samples()[(int) click.startFrame()])).isCloseTo(click.peak(), within(0.2 * click.peak()));
            assertThat(20 * Math.log10(click.peak())).isBetween(-32.0, -20.0);
        }
    }

    @ParameterizedTest
    @EnumSource(Interruptions.Hole.class)
    void dropoutsAreOneToFiftyMillisecondsAndChangeNothingElse(Interruptions.Hole hole) {
        float[] clean = sine(0.5, 440, 10);
        Injected<List<Interruptions.Spot>> torn = Faults.dropouts(clean, RATE_HZ, hole, 20, 4);
        boolean[] inside = new boolean[clean.length];
        for (Interruptions.Spot spot : torn.truth()) {
            assertThat(spot.frames()).isBetween(RATE_HZ / 1000, RATE_HZ / 20);
            Arrays.fill(inside, (int) spot.startFrame(), (int) spot.startFrame() + spot.frames(), true);
        }
        assertThat(torn.truth()).hasSize(20);
        int changed = 0;
        for (int i = 0; i < clean.length; i++) {
            changed += torn.samples()[i] != clean[i] ? 1 : 0;
            assertThat(inside[i] || torn.samples()[i] == clean[i]).isTrue();
        }
        assertThat(changed).isGreaterThan(RATE_HZ / 10);
    }

    @Test
    void theSameSeedGivesTheSameFaultAndAnotherSeedAnother() {
        float[] clean = sine(0.1, 440, 2);
        assertThat(Arrays.equals(Faults.crackle(clean, RATE_HZ, 5, -20, 2).samples(), Faults.crackle(clean, RATE_HZ, 5, -20, 2).samples())).isTrue();
        assertThat(Arrays.equals(Faults.crackle(clean, RATE_HZ, 5, -20, 2).samples(), Faults.crackle(clean, RATE_HZ, 5, -20, 3).samples())).isFalse();
        assertThat(Arrays.equals(clean, sine(0.1, 440, 2))).as("the clean take is left alone").isTrue();
    }

    @Test
    void gainStepsAndOffsetsDoWhatTheySay() {
        float[] clean = sine(0.1, 480, 2);
        Injected<Long> step = Faults.gainStep(clean, RATE_HZ, 1, 6);
        assertThat(step.truth()).isEqualTo(RATE_HZ);
        assertThat(step.samples()[RATE_HZ - 7]).isEqualTo(clean[RATE_HZ - 7]);
        assertThat(step.samples()[RATE_HZ + 25] / clean[RATE_HZ + 25]).isCloseTo(1.9953f, within(1e-3f));
        assertThat(amplitude(Faults.dcOffset(clean, 0.05).samples(), 0) / 2).isCloseTo(0.05, within(1e-5));
    }

    private static float[] sine(double amplitude, double hz, int seconds) {
        float[] out = new float[seconds * RATE_HZ];
        for (int i = 0; i < out.length; i++) {
            out[i] = (float) (amplitude * Math.sin(2 * Math.PI * hz * i / RATE_HZ));
        }
        return out;
    }

    private static double thdPercent(float[] x, double hz) {
        double power = 0;
        for (int k = 2; k * hz < 20_000; k++) {
            power += Math.pow(amplitude(x, k * hz), 2);
        }
        return 100 * Math.sqrt(power) / amplitude(x, hz);
    }

    /** Amplitude of one frequency by a plain sum with a Hann window, counted over whole seconds. */
    private static double amplitude(float[] x, double hz) {
        double real = 0;
        double imaginary = 0;
        double stepRe = Math.cos(2 * Math.PI * hz / RATE_HZ);
        double stepIm = Math.sin(2 * Math.PI * hz / RATE_HZ);
        double hannRe = Math.cos(2 * Math.PI / x.length);
        double hannIm = Math.sin(2 * Math.PI / x.length);
        double re = 1;
        double im = 0;
        double c = 1;
        double s = 0;
        for (float v : x) {
            real += (1 - c) * v * re;
            imaginary += (1 - c) * v * im;
            double turned = re * stepRe - im * stepIm;
            im = re * stepIm + im * stepRe;
            re = turned;
            double window = c * hannRe - s * hannIm;
            s = c * hannIm + s * hannRe;
            c = window;
        }
        return 2 * Math.hypot(real, imaginary) / x.length;
    }

    /** Mean power density near a frequency, in dB: the mean over forty neighbouring lines. */
    private static double band(float[] x, double hz) {
        double sum = 0;
        for (int k = -20; k < 20; k++) {
            sum += Math.pow(amplitude(x, hz * (1 + 0.01 * k) + 0.1 * k), 2);
        }
        return 10 * Math.log10(sum);
    }

    private static double power(float[] x) {
        double sum = 0;
        for (float v : x) {
            sum += v * (double) v;
        }
        return sum / x.length;
    }

    private static double highest(float[] x) {
        double highest = 0;
        for (float v : x) {
            highest = Math.max(highest, v);
        }
        return highest;
    }
}
