package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.ReferenceTable;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against sixteen-pole filters of scipy run over the same noise (band-levels.csv, made by band-levels.py beside it). */
class LongTermSpectrumReferenceTest {
    @ParameterizedTest(name = "{0} Hz")
    @ValueSource(ints = {44_100, 48_000})
    void bandLevelsAreThoseOfRealFilters(int sampleRateHz) {
        HopGrid grid = new HopGrid(sampleRateHz);
        LongTermSpectrumMeter meter = new LongTermSpectrumMeter(grid, grid.hopsIn(30));
        Blocks.feed(colouredNoise(30 * sampleRateHz), new ShortTimeSpectrum(grid, meter)::accept);
        List<BandLevel> levels = meter.reading(Signals.all(grid, meter.endHop(), ActivityReading.PLAYING)).bands();
        List<ReferenceTable.Row> rows = ReferenceTable.read("band-levels.csv").stream()
            .filter(row -> row.number("sample_rate_hz") == sampleRateHz).toList();
        assertThat(rows).hasSize(levels.size());
        for (int i = 0; i < rows.size(); i++) {
            BandLevel level = levels.get(i);
            assertThat(level.band().index()).isEqualTo((int) rows.get(i).number("index_x"));
            // Other skirts and other weights in time see another sample of the same noise: by more where few bins make a band.
            double tolerance = level.band().nominalHz() < 250 ? 0.15 : level.band().nominalHz() < 1000 ? 0.3 : 0.12;
            assertThat(level.levelDbfs()).as(level.band().nominalName()).isCloseTo(rows.get(i).number("level_dbfs"), within(tolerance));
        }
    }

    private static float[] colouredNoise(int frames) {
        float[] sound = new float[frames];
        long state = 1;
        double filtered = 0;
        for (int i = 0; i < frames; i++) {
            state = (1664525 * state + 1013904223) & 0xFFFF_FFFFL;
            filtered = 0.1 * (state / 2147483648.0 - 1) + 0.9 * filtered;
            sound[i] = (float) (0.5 * filtered);
        }
        return sound;
    }
}
