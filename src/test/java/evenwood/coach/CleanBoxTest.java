package evenwood.coach;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.eq.RigInUse;
import evenwood.judge.Fault;
import evenwood.judge.Finding;
import evenwood.judge.TargetWindow;
import evenwood.measure.TakeReadings;
import evenwood.rig.LearnedControl;
import evenwood.rig.LearnedFile;
import evenwood.rig.Presets;
import evenwood.rig.Setting;
import evenwood.takes.ReadingsSketch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a sweep told of how loud the box stays clean holds the hardest playing 3 dB under it. */
class CleanBoxTest {
    private static final Presets PRESETS = new Presets(Path.of("none"));

    @TempDir
    Path folder;

    @Test
    void playingOverTheBoxsLimitIsTurnedDownInFrontOfIt() throws IOException {
        Assessment assessment = assessed(-9, "Gain", 5, -8);
        assertThat(assessment.verdict().findings()).extracting(Finding::fault).containsExactly(Fault.TOO_HOT);
        assertThat(assessment.verdict().findings().get(0).evidence().key()).isEqualTo("too-hot.box");
        Move move = assessment.moves().get(0);
        assertThat(move.control().ownName()).contains("Gain");
        assertThat(-9 + move.changeDb().orElseThrow()).isLessThanOrEqualTo(-8 - 3 + 1e-9);
    }

    @Test
    void playingOverTheOnsetItselfIsClear() throws IOException {
        assertThat(assessed(-7.5, "Gain", 5, -8).verdict().findings().get(0).severity()).hasToString("CLEAR");
        assertThat(assessed(-9, "Gain", 5, -8).verdict().findings().get(0).severity()).hasToString("SLIGHT");
    }

    @Test
    void aQuietTakeIsBroughtUpToTheBoxsLimitAndTheRestBehindIt() throws IOException {
        List<Move> moves = assessed(-40, "Gain", 5, -25).moves();
        assertThat(moves).hasSize(2);
        assertThat(moves.get(0).control().ownName()).contains("Gain");
        double afterBox = -40 + moves.get(0).changeDb().orElseThrow();
        assertThat(afterBox).isLessThanOrEqualTo(-25 - 3 + 1e-9).isGreaterThan(-40 + 5);
        assertThat(moves.get(1).control().plainName().key()).isEqualTo("control.last-gain");
        assertThat(TargetWindow.DEFAULT.contains(afterBox + moves.get(1).changeDb().orElseThrow())).isTrue();
    }

    @Test
    void aBoxThatBearsMoreThanTheRecorderChangesNothing() throws IOException {
        assertThat(assessed(-9, "Gain", 5, -2).moves()).isEmpty();
    }

    @Test
    void atAPositionThatWasNotSweptNothingIsKnown() throws IOException {
        assertThat(assessed(-9, "Gain", 8, -8).moves()).isEmpty();
    }

    @Test
    void betweenTwoSweptPositionsTheLowerLevelHolds() throws IOException {
        assertThat(assessed(-9, "Gain", 4.5, -8).moves()).isNotEmpty();
    }

    @Test
    void withoutASweepThroughTheGainsThatThroughAToneControlCounts() throws IOException {
        assertThat(assessed(-9, "Bass", 5, -8).moves().get(0).control().ownName()).contains("Gain");
    }

    /** The swept control stood at 4 and 5: at 4 it stayed clean throughout, at 5 up to the level given. */
    private Assessment assessed(double peakDbtp, String swept, double stands, double cleanUpToDbfs) throws IOException {
        Path file = Files.writeString(folder.resolve("rig.yaml"), """
            name: Kitchen amp
            instrument: steel-string-guitar
            tap: amp-line-out
            controls: amp-bass-mid-treble
            positions:
              %s: %s
            """.formatted(swept, stands));
        RigInUse nominal = RigInUse.read(file, PRESETS);
        Setting at = nominal.rig().setting(swept).orElseThrow();
        List<Double> flat = Collections.nCopies(LearnedControl.FREQUENCIES_HZ.size(), 0.0);
        LearnedFile.keep(new LearnedControl(swept, LearnedControl.How.SWEEP, List.of(
            new LearnedControl.Curve(at.withGain(4), Collections.nCopies(flat.size(), -6.0), flat),
            new LearnedControl.Curve(at.withGain(5), flat, flat, OptionalDouble.of(cleanUpToDbfs))), List.of()), file, nominal.rig().controls());
        TakeReadings readings = new ReadingsSketch().truePeakDbtp(peakDbtp).readings();
        return new Coach(TargetWindow.DEFAULT).assess(readings, Optional.empty(), Optional.of(RigInUse.read(file, PRESETS)), PeakForecast.fromSpectrum(readings));
    }
}
