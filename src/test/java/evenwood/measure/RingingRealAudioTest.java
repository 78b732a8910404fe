package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.takes.PackagedTakes;
import evenwood.takes.Take;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Clean takes on every packaged instrument and voice; a false alarm on a held note would make the coach a nuisance. */
class RingingRealAudioTest {
    private static final HopGrid GRID = new HopGrid(48_000);

    static List<Take> takes() {
        return PackagedTakes.catalogue();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("takes")
    void nothingRingsWhereNothingHowls(Take take) {
        RingingMeter meter = new RingingMeter(GRID);
        Blocks.feed(PackagedTakes.samples(take.withRoom(-75, take.seed())), new ShortTimeSpectrum(GRID, meter)::accept);
        assertThat(meter.reading().rings()).isEmpty();
    }
}
