package evenwood.coach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.judge.Fault;
import evenwood.judge.TargetWindow;
import evenwood.measure.DistortionReading;
import evenwood.takes.ReadingsSketch;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GainCoachTest {
    private final Coach coach = new Coach(TargetWindow.DEFAULT);

    @ParameterizedTest
    @ValueSource(doubles = {-60, -40, -25, -15, -5, -2, -0.5})
    void theMoveBringsTheHardestPlayingIntoTheWindow(double peakDbtp) {
        List<Move> moves = moves(new ReadingsSketch().truePeakDbtp(peakDbtp));
        assertThat(moves).singleElement();
        double after = peakDbtp + moves.get(0).changeDb().orElseThrow();
        assertThat(TargetWindow.DEFAULT.contains(after)).as("peak afterwards %s", after).isTrue();
    }

    @ParameterizedTest
    @ValueSource(doubles = {-12, -9, -6})
    void insideTheWindowNothingIsTurned(double peakDbtp) {
        assertThat(moves(new ReadingsSketch().truePeakDbtp(peakDbtp))).isEmpty();
    }

    @Test
    void aStageBeforeIsFreedBeforeItAndMadeUpBehindIt() {
        List<Move> moves = moves(new ReadingsSketch().truePeakDbtp(-14)
            .distortion(DistortionReading.Verdict.ONSET, DistortionReading.Stage.BEFORE_CONVERTER, OptionalDouble.of(-18), 0, 0.97));
        assertThat(moves).hasSize(2);
        assertThat(moves.get(0).control().plainName().key()).isEqualTo("control.first-gain");
        double after = -14 + moves.get(0).changeDb().orElseThrow();
        assertThat(after).as("at least 3 dB under the onset").isLessThanOrEqualTo(-18 - 3 + 0.5);
        assertThat(moves.get(1).control().plainName().key()).isEqualTo("control.last-gain");
        assertThat(after + 1 + moves.get(1).changeDb().orElseThrow()).isCloseTo(TargetWindow.DEFAULT.aimDbtp(), within(1.0));
    }

    @Test
    void whatWasTurnedDownToFreeAStageIsNotTurnedUpAgain() {
        List<Move> made = moves(new ReadingsSketch().truePeakDbtp(-14)
            .distortion(DistortionReading.Verdict.ONSET, DistortionReading.Stage.BEFORE_CONVERTER, OptionalDouble.of(-18), 0, 0.97));
        ReadingsSketch quieter = new ReadingsSketch().truePeakDbtp(-24);
        assertThat(moves(quieter)).singleElement().satisfies(move -> assertThat(move.control()).isEqualTo(made.get(0).control()));

        List<Move> next = new Coach(TargetWindow.DEFAULT, made.subList(0, 1)).assess(quieter.readings()).moves();

        assertThat(next).singleElement().satisfies(move -> {
            assertThat(move.control().plainName().key()).isEqualTo("control.last-gain");
            assertThat(move.changeDb().orElseThrow()).isPositive();
            assertThat(move.why().key()).isEqualTo("gain.behind");
        });
    }

    @Test
    void aClippedConverterIsTurnedDownAtTheLastGainOnly() {
        List<Move> moves = moves(new ReadingsSketch().truePeakDbtp(0.3)
            .distortion(DistortionReading.Verdict.CLIPPED, DistortionReading.Stage.CONVERTER, OptionalDouble.empty(), 200, 0.99));
        assertThat(moves).singleElement().satisfies(move -> {
            assertThat(move.control().plainName().key()).isEqualTo("control.last-gain");
            assertThat(move.changeDb().orElseThrow()).isLessThanOrEqualTo(-9);
            assertThat(move.fault()).isEqualTo(Fault.CLIPPING);
        });
    }

    @Test
    void withoutPlayingNoGainIsTurned() {
        assertThat(moves(new ReadingsSketch().truePeakDbtp(-50).playing(0, Double.NEGATIVE_INFINITY))).isEmpty();
    }

    private List<Move> moves(ReadingsSketch sketch) {
        return coach.assess(sketch.readings()).moves();
    }
}
