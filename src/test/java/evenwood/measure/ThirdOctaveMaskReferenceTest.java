package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Steady sines through the whole way from samples to band powers, against the class 1 mask of IEC 61260-1:2014.
 * {@code mvn test -Dtest=ThirdOctaveMaskReferenceTest -Devenwood.print=true} prints the table of docs/accuracy.md.
 */
class ThirdOctaveMaskReferenceTest {
    private static final ThirdOctaveMask MASK = new ThirdOctaveMask();
    private static final double SETTLE_SECONDS = 1.2;
    private static final double MEASURE_SECONDS = 0.6;
    private static final double[] RATIOS = {1.0, 1.0133, 1.02667, 1.0410, 1.05575, 1.0714, 1.08746, 1.1045, 1.1215, 1.1225, 1.15, 1.2,
        1.25, 1.29437, 1.4, 1.6, 1.88173, 2.3, 3.05365, 4, 5.39195, 8};

    @ParameterizedTest(name = "{0} Hz")
    @ValueSource(ints = {8_000, 22_050, 44_100, 48_000, 96_000})
    void everyBandMeetsClassOne(int sampleRateHz) {
        List<ThirdOctave> bands = new LongTermSpectrumMeter(new HopGrid(sampleRateHz), 1).bands();
        double[] marginsDb = IntStream.range(0, bands.size()).parallel().mapToDouble(band -> marginDb(sampleRateHz, bands, band)).toArray();
        for (int band = 0; band < bands.size(); band++) {
            if (Boolean.getBoolean("evenwood.print")) {
                System.out.printf(Locale.ROOT, "%d Hz, band %s: margin %.2f dB%n", sampleRateHz, bands.get(band).nominalName(), marginsDb[band]);
            }
            assertThat(marginsDb[band]).as("class 1 margin in dB of the %s band", bands.get(band).nominalName()).isGreaterThan(0);
        }
    }

    /** Smallest distance to the mask over all test frequencies; negative where it is broken. */
    private static double marginDb(int sampleRateHz, List<ThirdOctave> bands, int band) {
        double centreHz = bands.get(band).centreHz();
        double referenceDb = levelDb(sampleRateHz, centreHz, band);
        double marginDb = Double.POSITIVE_INFINITY;
        for (double ratio : bothSides()) {
            double hz = centreHz * ratio;
            if (hz < 2 || hz > 0.499 * sampleRateHz) {
                continue;
            }
            double attenuationDb = referenceDb - levelDb(sampleRateHz, hz, band);
            marginDb = Math.min(marginDb, Math.min(attenuationDb - MASK.leastDb(ratio), MASK.mostDb(ratio) - attenuationDb));
        }
        // The reference itself: a full-scale sine in the middle of the band must read −3.01 dBFS.
        return Math.min(marginDb, 0.4 - Math.abs(referenceDb + 3.0103));
    }

    private static List<Double> bothSides() {
        List<Double> both = new ArrayList<>();
        for (double ratio : RATIOS) {
            both.add(ratio);
            both.add(1 / ratio);
        }
        return both;
    }

    private static double levelDb(int sampleRateHz, double hz, int band) {
        HopGrid grid = new HopGrid(sampleRateHz);
        int hops = grid.hopsIn(SETTLE_SECONDS + MEASURE_SECONDS);
        LongTermSpectrumMeter meter = new LongTermSpectrumMeter(grid, grid.hopsIn(MEASURE_SECONDS));
        float[] sine = Signals.sine(sampleRateHz, hops * grid.hopSeconds(), hz, 1);
        int fade = sampleRateHz / 2;
        for (int i = 0; i < fade; i++) {
            sine[i] *= (float) (0.5 - 0.5 * Math.cos(Math.PI * i / fade));
        }
        Blocks.feed(sine, 4096, new ShortTimeSpectrum(grid, meter)::accept);
        double sum = 0;
        for (long hop = meter.firstHop(); hop < meter.endHop(); hop++) {
            sum += meter.bandPower(hop, band);
        }
        return 10 * Math.log10(sum / (meter.endHop() - meter.firstHop()));
    }
}
