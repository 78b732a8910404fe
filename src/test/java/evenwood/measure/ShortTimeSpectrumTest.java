package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShortTimeSpectrumTest {
    private static final HopGrid GRID = new HopGrid(48_000);

    @ParameterizedTest(name = "{0} Hz")
    @ValueSource(ints = {8_000, 11_025, 44_100, 48_000, 96_000, 192_000})
    void aFullScaleSineSumsToOneHalf(int sampleRateHz) {
        List<float[]> spectra = spectra(new HopGrid(sampleRateHz), Signals.sine(sampleRateHz, 0.5, sampleRateHz * 0.0871, 1), 512);
        assertThat(spectra).hasSizeGreaterThan(5).allSatisfy(power -> assertThat(sum(power)).isCloseTo(0.5, within(1e-5)));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void noiseSumsToItsMeanSquare(long seed) {
        double mean = spectra(GRID, Signals.noise(seed, 48_000, 20, 0.1), 512).stream().mapToDouble(ShortTimeSpectrumTest::sum).average()
            .orElseThrow();
        assertThat(10 * Math.log10(mean / 0.01)).isCloseTo(0, within(0.05)); // 0.9 million samples: 1 sigma is 0.007 dB
    }

    /** Parseval on each frame: the sum over bins is the mean square of the windowed samples over that of the window. */
    @Test
    void everyFrameKeepsThePowerOfItsSamples() {
        float[] sound = Signals.noise(9, 48_000, 1, 0.3);
        float[] window = SpectrumWindow.HANN.ofSize(2 * GRID.hopFrames());
        List<float[]> spectra = spectra(GRID, sound, 700);
        for (int frame = 0; frame < spectra.size(); frame++) {
            double sum = 0;
            for (int i = 0; i < window.length; i++) {
                double x = sound[frame * GRID.hopFrames() + i] * (double) window[i];
                sum += x * x;
            }
            assertThat(sum(spectra.get(frame))).isCloseTo(sum / window.length / 0.375, within(1e-6));
        }
    }

    @Test
    void aLoudToneHidesNothingHundredAndThirtyDecibelsBelow() {
        double tone = 341 * 48_000.0 / 4096; // in the middle of a bin: the window leaves only the two next to it
        float[] power = spectra(GRID, Signals.sine(48_000, 0.2, tone, 1), 512).get(0);
        for (int k = 1; k < power.length; k++) {
            if (Math.abs(k - 341) > 2) {
                assertThat(10 * Math.log10(power[k] / 0.333)).as("bin %d", k).isLessThan(-130);
            }
        }
    }

    @ParameterizedTest(name = "blocks of {0}")
    @ValueSource(ints = {1, 7, 512, 2048, 4096, 4097, 8192})
    void blockSizeChangesNothing(int blockFrames) {
        float[] sound = Signals.noise(3, 48_000, 0.7, 0.2);
        assertThat(spectra(GRID, sound, blockFrames)).usingRecursiveComparison().isEqualTo(spectra(GRID, sound, 512));
    }

    @Test
    void theFirstSpectrumComesWithTheSecondHop() {
        List<Long> hops = new ArrayList<>();
        ShortTimeSpectrum spectrum = new ShortTimeSpectrum(GRID, (hop, heard) -> hops.add(hop));
        Blocks.feed(new float[3 * GRID.hopFrames() + 5], 512, spectrum::accept);
        assertThat(hops).containsExactly(1L, 2L);
        spectrum.reset();
        Blocks.feed(new float[2 * GRID.hopFrames()], 512, spectrum::accept);
        assertThat(hops).containsExactly(1L, 2L, 1L);
    }

    @Test
    void acceptAllocatesNothing() {
        ShortTimeSpectrum spectrum = new ShortTimeSpectrum(GRID, new LongTermSpectrumMeter(GRID, 100));
        assertThat(Allocation.bytesOf(spectrum::accept)).isZero();
    }

    private static List<float[]> spectra(HopGrid grid, float[] sound, int blockFrames) {
        List<float[]> spectra = new ArrayList<>();
        ShortTimeSpectrum spectrum = new ShortTimeSpectrum(grid, (hop, heard) -> spectra.add(heard.power().clone()));
        Blocks.feed(sound, blockFrames, spectrum::accept);
        return spectra;
    }

    private static double sum(float[] power) {
        double sum = 0;
        for (float value : power) {
            sum += value;
        }
        return sum;
    }
}
