package evenwood.coach;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.judge.Fault;
import evenwood.judge.TargetWindow;
import evenwood.measure.DistortionReading;
import evenwood.measure.TakeReadings;
import evenwood.takes.ReadingsSketch;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ClippedDriveTest {
    private final Coach coach = new Coach(TargetWindow.DEFAULT);

    @Test
    void theMoreIsCutOffTheFurtherOver() {
        double last = ClippedDrive.db(clipped(0));
        for (long samples = 1; samples < 1_000_000; samples *= 2) {
            double drive = ClippedDrive.db(clipped(samples));
            assertThat(drive).isGreaterThanOrEqualTo(last);
            last = drive;
        }
    }

    /** Fifty seconds of playing: two a second are about 2 dB over, 250 a second about 8. */
    @Test
    void aHandfulMoreIsTheSameAndAHundredTimesAsManyIsWorse() {
        assertThat(change(100, 250)).isEqualTo(FaultChange.Change.SAME);
        assertThat(change(250, 100)).isEqualTo(FaultChange.Change.SAME);
        assertThat(change(100, 12_500)).isEqualTo(FaultChange.Change.WORSE);
        assertThat(change(12_500, 100)).isEqualTo(FaultChange.Change.BETTER);
    }

    @Test
    void muchThatIsGoneIsBetterAndACoupleOfSamplesGoneProvesNothing() {
        assertThat(change(2500, 0)).isEqualTo(FaultChange.Change.BETTER);
        assertThat(change(20, 0)).isEqualTo(FaultChange.Change.SAME);
    }

    private FaultChange.Change change(long before, long now) {
        return coach.comparedWith(coach.assess(clipped(now)), clipped(before), Optional.empty(), OptionalDouble.empty()).comparison().orElseThrow()
            .faults().stream().filter(each -> each.fault() == Fault.CLIPPING).findFirst().orElseThrow().change();
    }

    private static TakeReadings clipped(long samples) {
        return samples == 0 ? new ReadingsSketch().readings() : new ReadingsSketch().truePeakDbtp(0.1)
            .distortion(DistortionReading.Verdict.CLIPPED, DistortionReading.Stage.CONVERTER, OptionalDouble.empty(), samples, 0.99).readings();
    }
}
