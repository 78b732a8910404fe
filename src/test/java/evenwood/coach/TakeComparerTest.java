package evenwood.coach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.coach.FaultChange.Change;
import evenwood.judge.Fault;
import evenwood.judge.TargetWindow;
import evenwood.measure.DistortionReading;
import evenwood.takes.ReadingsSketch;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TakeComparerTest {
    private static final double NONE = Double.NEGATIVE_INFINITY;
    private static final OptionalDouble UNKNOWN = OptionalDouble.empty();

    @Test
    void lessHumIsBetterByAsManyDecibels() {
        FaultChange hum = change(Fault.HUM, humming(-45), humming(-57), UNKNOWN);
        assertThat(hum.change()).isEqualTo(Change.BETTER);
        assertThat(hum.changeDb().orElseThrow()).isCloseTo(-12, within(1e-9));
        assertThat(hum.confidence()).isGreaterThan(0.99);
    }

    @Test
    void moreHumIsWorseAndAlmostAsMuchIsTheSame() {
        assertThat(change(Fault.HUM, humming(-57), humming(-45), UNKNOWN).change()).isEqualTo(Change.WORSE);
        assertThat(change(Fault.HUM, humming(-45), humming(-45.4), UNKNOWN).change()).isEqualTo(Change.SAME);
    }

    @Test
    void humThatOnlyCameAlongWithTheGainIsTheSame() {
        ReadingsSketch louder = humming(-41).playing(50, -20);
        assertThat(change(Fault.HUM, humming(-45), louder, OptionalDouble.of(4)).change()).isEqualTo(Change.SAME);
        assertThat(change(Fault.HUM, humming(-45), louder, OptionalDouble.of(0)).change()).isEqualTo(Change.WORSE);
    }

    @Test
    void humThatIsGoneIsBetterThoughNothingIsLeftToMeasure() {
        assertThat(change(Fault.HUM, humming(-45), new ReadingsSketch().noise(-80, NONE, NONE, -81), UNKNOWN).change()).isEqualTo(Change.BETTER);
    }

    @Test
    void distortionThatIsGoneIsBetterByHowSureItWas() {
        ReadingsSketch overdriven = new ReadingsSketch().truePeakDbtp(-14)
            .distortion(DistortionReading.Verdict.CLIPPED, DistortionReading.Stage.BEFORE_CONVERTER, OptionalDouble.of(-18), 0, 0.97);
        FaultChange change = change(Fault.OVERDRIVEN, overdriven, new ReadingsSketch(), UNKNOWN);
        assertThat(change.change()).isEqualTo(Change.BETTER);
        assertThat(change.changeDb()).isEmpty();
        assertThat(change.confidence()).isCloseTo(0.97 * 0.98, within(0.001));
    }

    @Test
    void oneClickMoreOrLessIsNoChangeButThirtyAre() {
        assertThat(change(Fault.CRACKLE, new ReadingsSketch().clicks(12), new ReadingsSketch().clicks(11), UNKNOWN).change()).isEqualTo(Change.SAME);
        assertThat(change(Fault.CRACKLE, new ReadingsSketch().clicks(40), new ReadingsSketch().clicks(0), UNKNOWN).change()).isEqualTo(Change.BETTER);
    }

    @Test
    void whatNeitherTakeHasIsNotSpokenOf() {
        assertThat(comparison(new ReadingsSketch(), new ReadingsSketch(), UNKNOWN).faults()).isEmpty();
    }

    private static ReadingsSketch humming(double humDbfs) {
        return new ReadingsSketch().noise(humDbfs + 0.1, humDbfs, NONE, -80);
    }

    private static FaultChange change(Fault fault, ReadingsSketch before, ReadingsSketch now, OptionalDouble gainDb) {
        return comparison(before, now, gainDb).faults().stream().filter(each -> each.fault() == fault).findFirst().orElseThrow();
    }

    private static Comparison comparison(ReadingsSketch before, ReadingsSketch now, OptionalDouble gainDb) {
        Coach coach = new Coach(TargetWindow.DEFAULT);
        return coach.comparedWith(coach.assess(now.readings()), before.readings(), Optional.empty(), gainDb).comparison().orElseThrow();
    }
}
