package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.takes.PackagedTakes;
import evenwood.takes.PlayedInstrument;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class LongTermSpectrumRealAudioTest {
    private static final HopGrid GRID = new HopGrid(48_000);

    private record Heard(LongTermSpectrumReading spectrum, ActivityReading activity) { }

    @ParameterizedTest
    @EnumSource(value = PlayedInstrument.class, names = {"STEEL_STRING_GUITAR", "NYLON_STRING_GUITAR", "MANDOLIN", "LEVER_HARP", "UKULELE",
        "VIOLIN", "CELLO", "FIVE_STRING_BANJO"})
    void aSoundcheckGivesASpectrumOneCanJudge(PlayedInstrument instrument) {
        Heard heard = heard(take(instrument));
        LongTermSpectrumReading spectrum = heard.spectrum;
        assertThat(spectrum.isTooShort()).isFalse();
        assertThat(spectrum.noiseKnown()).isTrue();
        assertThat(spectrum.playingSeconds()).isBetween(10.0, heard.activity.playingSeconds() + 0.1);
        BandLevel loudest = spectrum.bands().stream().max((a, b) -> Double.compare(a.relativeDb(), b.relativeDb())).orElseThrow();
        // The strongest third octave of a pitched instrument lies from its lowest note to the bridge hill's upper end (3 kHz).
        assertThat(loudest.band().centreHz()).isBetween(60.0, 3000.0);
        assertThat(loudest.signalToNoiseDb()).isGreaterThan(25);
        // One hard strum or one long bowed note may carry its band, so half a minute leaves some decibels open there.
        assertThat(loudest.relativeHalfWidthDb()).isBetween(0.1, 8.0);
        assertThat(spectrum.bands()).filteredOn(BandLevel::isAboveNoise).filteredOn(level -> level.relativeHalfWidthDb() < 3)
            .hasSizeGreaterThan(3);
        assertThat(spectrum.bands()).filteredOn(BandLevel::isAboveNoise).hasSizeGreaterThan(12);
    }

    /** Below its lowest note a quiet violin has only the chain's noise, and that is said. */
    @ParameterizedTest
    @EnumSource(value = PlayedInstrument.class, names = {"VIOLIN", "FIDDLE"})
    void belowTheLowestNoteThereIsNothingToJudge(PlayedInstrument instrument) {
        LongTermSpectrumReading spectrum = heard(take(instrument)).spectrum;
        assertThat(spectrum.bands()).filteredOn(level -> level.band().upperHz() < 100).isNotEmpty()
            .allSatisfy(level -> assertThat(level.signalToNoiseDb()).isLessThan(15));
    }

    /** A cookbook peak of +6 dB at 1 kHz, Q 1: what an equaliser does is what the bands show. Source: biquad check row 1. */
    @ParameterizedTest
    @EnumSource(value = PlayedInstrument.class, names = {"STEEL_STRING_GUITAR", "VIOLIN", "LEVER_HARP"})
    void anEqualiserIsSeenAsItIsSet(PlayedInstrument instrument) {
        float[] take = take(instrument);
        ActivityReading activity = heard(take).activity;
        LongTermSpectrumReading flat = spectrum(take, activity);
        LongTermSpectrumReading peaked = spectrum(peakAtOneKilohertz(take), activity);
        double[][] expected = {{250, 0.423}, {500, 1.879}, {1000, 6.0}, {2000, 1.866}, {4000, 0.405}};
        for (double[] point : expected) {
            double changeDb = level(peaked, point[0]).levelDbfs() - level(flat, point[0]).levelDbfs();
            // The curve bends inside a band, and the notes need not lie in its middle: at the flanks 1 dB between the edges.
            assertThat(changeDb).as("change at %s Hz", point[0]).isCloseTo(point[1], within(point[0] == 250 || point[0] == 4000 ? 0.15 : 0.8));
        }
    }

    private static float[] take(PlayedInstrument instrument) {
        return PackagedTakes.samples(PackagedTakes.of(instrument).withRoom(-75, 1));
    }

    private static Heard heard(float[] take) {
        int hops = GRID.hopsIn(take.length / 48_000.0);
        ActivityMeter activity = new ActivityMeter(GRID, hops);
        Blocks.feed(take, activity::accept);
        return new Heard(spectrum(take, activity.reading()), activity.reading());
    }

    private static LongTermSpectrumReading spectrum(float[] take, ActivityReading activity) {
        LongTermSpectrumMeter meter = new LongTermSpectrumMeter(GRID, GRID.hopsIn(take.length / 48_000.0));
        Blocks.feed(take, new ShortTimeSpectrum(GRID, meter)::accept);
        return meter.reading(activity);
    }

    private static float[] peakAtOneKilohertz(float[] in) {
        float[] out = new float[in.length];
        double s1 = 0;
        double s2 = 0;
        for (int i = 0; i < in.length; i++) {
            double y = 1.04395308699034 * in[i] + s1;
            s1 = -1.8953207239366 * in[i] + 1.8953207239366 * y + s2;
            s2 = 0.867722284759857 * in[i] - 0.911675371750192 * y;
            out[i] = (float) y;
        }
        return out;
    }

    private static BandLevel level(LongTermSpectrumReading reading, double nominalHz) {
        ThirdOctave band = ThirdOctave.containing(nominalHz);
        return reading.bands().stream().filter(level -> level.band().equals(band)).findFirst().orElseThrow();
    }
}
