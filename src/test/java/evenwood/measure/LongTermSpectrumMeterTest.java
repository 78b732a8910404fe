package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LongTermSpectrumMeterTest {
    private static final int RATE_HZ = 48_000;
    private static final HopGrid GRID = new HopGrid(RATE_HZ);

    @ParameterizedTest(name = "{0} Hz")
    @CsvSource({"50", "80", "200", "250", "1000", "16000"})
    void aSineIsReadInItsBand(double nominalHz) {
        ThirdOctave band = ThirdOctave.containing(nominalHz);
        LongTermSpectrumMeter meter = heard(Signals.sine(RATE_HZ, 12, band.centreHz(), 0.1));
        LongTermSpectrumReading reading = meter.reading(from(meter, 20, ActivityReading.PLAYING));
        assertThat(level(reading, nominalHz).levelDbfs()).isCloseTo(-23.01, within(0.05));
        // Six-pole skirts let 1.5 % of the power into each neighbour (−18.3 dB), so all together are up to 0.13 dB more.
        assertThat(level(reading, nominalHz).relativeDb()).isBetween(-0.14, 0.0);
        assertThat(reading.overallDbfs()).isBetween(-23.06, -22.87);
    }

    @Test
    void whiteNoiseRisesOneDecibelABand() {
        LongTermSpectrumMeter meter = heard(Signals.noise(5, RATE_HZ, 40, 0.1));
        LongTermSpectrumReading reading = meter.reading(from(meter, 0, ActivityReading.PLAYING));
        for (BandLevel level : reading.bands()) {
            double trueDbfs = -20 + 10 * Math.log10((level.band().upperHz() - level.band().lowerHz()) / (RATE_HZ / 2.0));
            assertThat(level.levelDbfs()).as(level.band().nominalName()).isCloseTo(trueDbfs, within(1.0));
            if (level.band().nominalHz() >= 1000) {
                assertThat(level.levelDbfs()).as(level.band().nominalName()).isCloseTo(trueDbfs, within(0.15));
            }
        }
    }

    @Test
    void lowMiddleAndHighMakeTheWhole() {
        LongTermSpectrumMeter meter = heard(Signals.noise(6, RATE_HZ, 12, 0.1));
        LongTermSpectrumReading reading = meter.reading(from(meter, 0, ActivityReading.PLAYING));
        double whole = Math.pow(10, reading.lowDb() / 10) + Math.pow(10, reading.midDb() / 10) + Math.pow(10, reading.highDb() / 10);
        assertThat(whole).isCloseTo(1, within(1e-9));
        // White noise: the share of each part is its bandwidth (edges 44.67, 223.9, 2239 and 17 783 Hz).
        assertThat(reading.lowDb()).isCloseTo(10 * Math.log10(179.2 / 17_738), within(0.4));
        assertThat(reading.midDb()).isCloseTo(10 * Math.log10(2015 / 17_738.0), within(0.2));
        assertThat(reading.highDb()).isCloseTo(10 * Math.log10(15_544 / 17_738.0), within(0.1));
    }

    @Test
    void silenceIsMinusInfinityAndNeverNaN() {
        LongTermSpectrumMeter meter = heard(new float[RATE_HZ * 15]);
        for (byte state : new byte[] {ActivityReading.PLAYING, ActivityReading.QUIET}) {
            LongTermSpectrumReading reading = meter.reading(from(meter, 0, state));
            assertThat(reading.isSilent()).isTrue();
            assertThat(reading.lowDb()).isEqualTo(Double.NEGATIVE_INFINITY);
            assertThat(reading.weightedDbfs(Weighting.A)).isEqualTo(Double.NEGATIVE_INFINITY);
            assertThat(reading.bands()).hasSize(26).allSatisfy(level -> {
                assertThat(level.levelDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
                assertThat(level.halfWidthDb()).isEqualTo(Double.POSITIVE_INFINITY);
                assertThat(level.isAboveNoise()).isFalse();
            });
        }
    }

    @Test
    void nothingHeardIsSilent() {
        LongTermSpectrumMeter meter = new LongTermSpectrumMeter(GRID, 100);
        LongTermSpectrumReading reading = meter.reading(Signals.all(GRID, 0, ActivityReading.PLAYING));
        assertThat(reading.isSilent()).isTrue();
        assertThat(reading.isTooShort()).isTrue();
        assertThat(reading.playingSeconds()).isZero();
    }

    @ParameterizedTest(name = "{0} Hz has {1} bands")
    @CsvSource({"8000, 19", "16000, 22", "22050, 23", "32000, 25", "44100, 26", "192000, 26"})
    void bandsAboveHalfTheSampleRateAreAbsent(int sampleRateHz, int bands) {
        assertThat(new LongTermSpectrumMeter(new HopGrid(sampleRateHz), 1).bands()).hasSize(bands)
            .allSatisfy(band -> assertThat(band.upperHz()).isLessThanOrEqualTo(sampleRateHz / 2.0));
    }

    @Test
    void underTenSecondsOfPlayingThereIsNoConfidence() {
        LongTermSpectrumMeter meter = heard(Signals.noise(1, RATE_HZ, 11, 0.1));
        ActivityReading played = from(meter, 0, ActivityReading.PLAYING);
        assertThat(meter.reading(played).isTooShort()).isFalse();
        assertThat(level(meter.reading(played), 1000).relativeHalfWidthDb()).isBetween(0.05, 1.0);
        ActivityReading less = from(meter, 60, ActivityReading.PLAYING);
        assertThat(meter.reading(less).isTooShort()).isTrue();
        assertThat(level(meter.reading(less), 1000).relativeHalfWidthDb()).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(level(meter.reading(less), 1000).levelDbfs()).isFinite();
    }

    /** Noise is known from the quiet half, taken off the playing half, and told where it is nearly all there is. */
    @Test
    void steadyNoiseIsTakenOffAndToldOf() {
        float[] noise = Signals.noise(2, RATE_HZ, 48, 0.001);
        float[] tone = Signals.sine(RATE_HZ, 24, ThirdOctave.containing(1000).centreHz(), 0.003);
        LongTermSpectrumMeter meter = heard(Signals.add(noise, tone));
        byte[] states = new byte[(int) meter.endHop()];
        Arrays.fill(states, 0, states.length / 2 - 2, ActivityReading.PLAYING);
        Arrays.fill(states, states.length / 2 + 4, states.length, ActivityReading.QUIET);
        LongTermSpectrumReading reading = meter.reading(new ActivityReading(GRID, 0, states, -60));
        double noiseDbfs = -60 + 10 * Math.log10(230.77 / 24_000);
        double toneDbfs = 20 * Math.log10(0.003) - 3.01;
        assertThat(reading.noiseKnown()).isTrue();
        assertThat(level(reading, 1000).signalToNoiseDb()).isCloseTo(toneDbfs - noiseDbfs, within(0.5));
        assertThat(level(reading, 1000).levelDbfs()).isCloseTo(toneDbfs, within(0.1));
        assertThat(level(reading, 1000).isAboveNoise()).isTrue();
        assertThat(reading.bands().stream().filter(BandLevel::isAboveNoise)).hasSize(1);
        assertThat(level(reading, 4000).signalToNoiseDb()).isCloseTo(0, within(0.5));
    }

    /** A tone as strong in its band as the noise plus 6.5 dB: the noise makes 1.1 dB of the sum and is taken off. */
    @Test
    void justAboveTheNoiseTheLevelIsStillRight() {
        double noiseDbfs = -60 + 10 * Math.log10(230.77 / 24_000);
        double amplitude = Math.sqrt(2 * (Math.pow(10, (noiseDbfs + 7) / 10) - Math.pow(10, noiseDbfs / 10)));
        float[] tone = Signals.sine(RATE_HZ, 60, ThirdOctave.containing(1000).centreHz(), amplitude);
        LongTermSpectrumMeter meter = heard(Signals.add(Signals.noise(4, RATE_HZ, 120, 0.001), tone));
        byte[] states = new byte[(int) meter.endHop()];
        Arrays.fill(states, 0, states.length / 2 - 2, ActivityReading.PLAYING);
        Arrays.fill(states, states.length / 2 + 4, states.length, ActivityReading.QUIET);
        BandLevel level = level(meter.reading(new ActivityReading(GRID, 0, states, -60)), 1000);
        assertThat(level.signalToNoiseDb()).isCloseTo(7, within(0.2));
        assertThat(level.levelDbfs()).isCloseTo(20 * Math.log10(amplitude) - 3.01, within(0.2));
    }

    @Test
    void onlyPlayingHopsCount() {
        float[] half = Signals.sine(RATE_HZ, 12, ThirdOctave.containing(1000).centreHz(), 0.1);
        LongTermSpectrumMeter meter = heard(Blocks.joined(half, Signals.noise(7, RATE_HZ, 12, 0.3)));
        byte[] states = new byte[(int) meter.endHop()];
        Arrays.fill(states, 4, (int) (11 / GRID.hopSeconds()), ActivityReading.PLAYING);
        LongTermSpectrumReading reading = meter.reading(new ActivityReading(GRID, 0, states, -60));
        assertThat(level(reading, 1000).levelDbfs()).isCloseTo(-23.01, within(0.05));
        assertThat(level(reading, 4000).levelDbfs()).isLessThan(-100);
    }

    @Test
    void oldHopsFallOutOfMemory() {
        LongTermSpectrumMeter meter = new LongTermSpectrumMeter(GRID, 100);
        Blocks.feed(Blocks.joined(Signals.noise(1, RATE_HZ, 5, 0.5), Signals.noise(2, RATE_HZ, 5, 0.005)), new ShortTimeSpectrum(GRID, meter)::accept);
        assertThat(meter.endHop() - meter.firstHop()).isEqualTo(100);
        assertThat(meter.reading(from(meter, 0, ActivityReading.PLAYING)).overallDbfs()).isCloseTo(20 * Math.log10(0.005) - 1.3, within(0.3));
        long tooOld = meter.firstHop() - 1;
        assertThatThrownBy(() -> meter.bandPower(tooOld, 0)).isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void afterResetNothingIsLeft() {
        LongTermSpectrumMeter meter = new LongTermSpectrumMeter(GRID, 400);
        ShortTimeSpectrum spectrum = new ShortTimeSpectrum(GRID, meter);
        float[] sound = Signals.noise(3, RATE_HZ, 12, 0.1);
        Blocks.feed(sound, spectrum::accept);
        LongTermSpectrumReading first = meter.reading(from(meter, 0, ActivityReading.PLAYING));
        spectrum.reset();
        meter.reset();
        assertThat(meter.endHop()).isZero();
        Blocks.feed(sound, spectrum::accept);
        assertThat(meter.reading(from(meter, 0, ActivityReading.PLAYING))).isEqualTo(first);
    }

    @Test
    void hearingAllocatesNothing() {
        assertThat(Allocation.bytesOf(new ShortTimeSpectrum(GRID, new LongTermSpectrumMeter(GRID, 100))::accept)).isZero();
    }

    private static LongTermSpectrumMeter heard(float[] sound) {
        LongTermSpectrumMeter meter = new LongTermSpectrumMeter(GRID, GRID.hopsIn(sound.length / (double) RATE_HZ));
        Blocks.feed(sound, new ShortTimeSpectrum(GRID, meter)::accept);
        return meter;
    }

    private static ActivityReading from(LongTermSpectrumMeter meter, int firstHop, byte state) {
        ActivityReading all = Signals.all(GRID, meter.endHop(), state);
        Arrays.fill(all.states(), 0, Math.min(firstHop, all.states().length), ActivityReading.NEITHER);
        return all;
    }

    private static BandLevel level(LongTermSpectrumReading reading, double nominalHz) {
        ThirdOctave band = ThirdOctave.containing(nominalHz);
        return reading.bands().stream().filter(level -> level.band().equals(band)).findFirst().orElseThrow();
    }
}
