package evenwood.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.eq.EqFilter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Against the digital filters of the cookbook, which EqFilterReferenceTest holds against scipy: at a sample rate so high
 * that the bilinear transform no longer matters the two must agree.
 */
class ToneShapeReferenceTest {
    private static final double RATE_HZ = 4_000_000;
    private static final double AMOUNT_DB = 8;

    @ParameterizedTest(name = "at {0} Hz")
    @ValueSource(doubles = {50, 125, 400, 800, 1000, 1250, 3150, 8000, 16_000})
    void bellsAndShelvesAreThoseOfTheCookbook(double hz) {
        assertShape(new ToneShape(ToneShape.Kind.BELL, 900, 1.2), EqFilter.peak(900, 1.2, AMOUNT_DB), hz);
        assertShape(new ToneShape(ToneShape.Kind.LOW_SHELF, 300, Math.sqrt(0.5)), EqFilter.lowShelf(300, Math.sqrt(0.5), AMOUNT_DB), hz);
        assertShape(new ToneShape(ToneShape.Kind.HIGH_SHELF, 2500, Math.sqrt(0.5)), EqFilter.highShelf(2500, Math.sqrt(0.5), AMOUNT_DB), hz);
    }

    private static void assertShape(ToneShape shape, EqFilter filter, double hz) {
        assertThat(AMOUNT_DB * shape.perDb(hz)).as("%s at %s Hz", shape, hz).isCloseTo(filter.responseDb(hz, RATE_HZ), within(0.001));
    }
}
