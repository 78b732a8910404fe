package evenwood.judge;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.measure.DistortionReading;
import evenwood.measure.Ring;
import evenwood.measure.TakeReadings;
import evenwood.measure.Tone;
import evenwood.takes.ReadingsSketch;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JudgeTest {
    private static final double NONE = Double.NEGATIVE_INFINITY;
    private final Judge judge = new Judge(TargetWindow.DEFAULT);

    @Test
    void aGoodTakeHasNoFindingAndNothingMissing() {
        Verdict verdict = judge.judge(new ReadingsSketch().noise(-90, NONE, NONE, -90).readings());
        assertThat(verdict.findings()).isEmpty();
        assertThat(verdict.missing()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"-5.9, SLIGHT", "-1.1, SLIGHT", "-0.9, CLEAR", "2, CLEAR"})
    void overTheWindowIsTooHot(double peakDbtp, Severity severity) {
        assertThat(single(new ReadingsSketch().truePeakDbtp(peakDbtp))).satisfies(is(Fault.TOO_HOT, severity));
    }

    @ParameterizedTest
    @CsvSource({"-15, SLIGHT", "-29, SLIGHT", "-31, CLEAR", "-49, STRONG"})
    void underTheWindowIsTooQuiet(double peakDbtp, Severity severity) {
        assertThat(single(new ReadingsSketch().truePeakDbtp(peakDbtp).playing(50, peakDbtp - 15))).satisfies(is(Fault.TOO_QUIET, severity));
    }

    @Test
    void aLittleUnderTheWindowIsNoFinding() {
        assertThat(judge.judge(new ReadingsSketch().truePeakDbtp(-13.9).readings()).findings()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"-80, ", "-72, SLIGHT", "-60, CLEAR", "-45, STRONG"})
    void humIsJudgedAgainstThePlaying(double humDbfs, Severity severity) {
        List<Finding> findings = judge.judge(new ReadingsSketch().noise(humDbfs, humDbfs, NONE, NONE).readings()).findings();
        if (severity == null) {
            assertThat(findings).isEmpty();
        } else {
            assertThat(findings).singleElement().satisfies(is(Fault.HUM, severity));
        }
    }

    @Test
    void theSameHumMattersLessUnderLouderPlaying() {
        assertThat(judge.judge(new ReadingsSketch().playing(50, -14).noise(-60, -60, NONE, NONE).readings()).findings())
            .singleElement().satisfies(is(Fault.HUM, Severity.SLIGHT));
    }

    @Test
    void everyNoiseHasItsOwnFinding() {
        TakeReadings readings = new ReadingsSketch().noise(-50, -60, -65, -55, new Tone(1000, -60), new Tone(8000, -70)).readings();
        assertThat(judge.judge(readings).findings()).extracting(Finding::fault)
            .containsExactlyInAnyOrder(Fault.HUM, Fault.BUZZ, Fault.HISS, Fault.TONE_INTERFERENCE);
    }

    @Test
    void theLoudestToneIsTheOneNamed() {
        Verdict verdict = judge.judge(new ReadingsSketch().noise(-60, NONE, NONE, NONE, new Tone(8000, -70), new Tone(1000, -60)).readings());
        assertThat(verdict.findings()).singleElement().extracting(finding -> finding.bandHz().orElseThrow().lowHz()).isEqualTo(1000.0);
    }

    @Test
    void fullScaleIsClippingAndAStageBeforeIsOverdriven() {
        assertThat(distorted(DistortionReading.Verdict.CLIPPED, DistortionReading.Stage.CONVERTER, 0.99)).satisfies(is(Fault.CLIPPING, Severity.STRONG));
        assertThat(distorted(DistortionReading.Verdict.ONSET, DistortionReading.Stage.BEFORE_CONVERTER, 0.95)).satisfies(is(Fault.OVERDRIVEN, Severity.CLEAR));
        assertThat(distorted(DistortionReading.Verdict.ONSET, DistortionReading.Stage.BEFORE_CONVERTER, 0.7)).satisfies(is(Fault.OVERDRIVEN, Severity.SLIGHT));
    }

    @Test
    void anUnsureMeterMakesNoFindingButAsksForMore() {
        Verdict verdict = judge.judge(new ReadingsSketch()
            .distortion(DistortionReading.Verdict.UNSURE, DistortionReading.Stage.NONE, OptionalDouble.empty(), 0, 0.6).readings());
        assertThat(verdict.findings()).isEmpty();
        assertThat(verdict.missing()).extracting(Statement::key).containsExactly("missing.distortion-unsure");
    }

    @Test
    void crackleAndDropoutsAreCounted() {
        assertThat(single(new ReadingsSketch().clicks(1))).satisfies(is(Fault.CRACKLE, Severity.SLIGHT));
        assertThat(single(new ReadingsSketch().clicks(6))).satisfies(is(Fault.CRACKLE, Severity.CLEAR));
        assertThat(single(new ReadingsSketch().clicks(60))).satisfies(is(Fault.CRACKLE, Severity.STRONG));
        assertThat(single(new ReadingsSketch().dropouts(1))).satisfies(is(Fault.DROPOUT, Severity.CLEAR));
    }

    @Test
    void aHowlIsNamedWithItsFrequency() {
        Finding one = single(new ReadingsSketch().rings(new Ring(412, 3.2, 3.6, 12)));
        assertThat(one).satisfies(is(Fault.RINGING, Severity.CLEAR));
        assertThat(one.bandHz()).contains(new BandHz(412, 412));
        assertThat(single(new ReadingsSketch().rings(new Ring(412, 3.2, 3.6, 12), new Ring(900, 8, 8.3, 40)))).satisfies(is(Fault.RINGING, Severity.STRONG));
    }

    @Test
    void aPickOnTheStringIsNoCrackle() {
        assertThat(judge.judge(new ReadingsSketch().notesAt(1, 2, 3, 4, 5).clicksAt(1.01, 2.02, 3.0, 4.01, 5.02).readings()).findings()).isEmpty();
        assertThat(single(new ReadingsSketch().notesAt(1, 2, 3, 4, 5).clicksAt(1.3, 2.02, 3.5, 4.6, 5.7))).satisfies(is(Fault.CRACKLE, Severity.CLEAR));
    }

    @Test
    void whatTheTakeDidNotShowIsSaidNotGuessed() {
        Verdict verdict = judge.judge(new ReadingsSketch().playing(3, -24).quietSeconds(0.2).dynamics(NONE, NONE, NONE, 2).readings());
        assertThat(verdict.missing()).extracting(Statement::key).containsExactly("missing.playing", "missing.quiet", "missing.notes");
    }

    @Test
    void gainCannotSuitSoftAndHardWhenNoiseIsNear() {
        Verdict verdict = judge.judge(new ReadingsSketch().noise(-45, NONE, NONE, -45).dynamics(-30, -20, -10, 80).readings());
        assertThat(verdict.missing()).extracting(Statement::key).containsExactly("missing.noise-room");
    }

    @Test
    void withoutPlayingNothingIsSaidOfLevelButNoiseIs() {
        Verdict verdict = judge.judge(new ReadingsSketch().truePeakDbtp(-45).playing(0, NONE).noise(-48, -50, NONE, NONE).readings());
        assertThat(verdict.findings()).singleElement().satisfies(is(Fault.HUM, Severity.STRONG));
        assertThat(verdict.findings().get(0).evidence().key()).isEqualTo("hum.alone");
        assertThat(verdict.missing()).extracting(Statement::key).containsExactly("missing.any-playing");
    }

    @Test
    void findingsComeStrongestFirst() {
        List<Finding> findings = judge.judge(new ReadingsSketch().truePeakDbtp(-5).clicks(6).noise(-45, -45, NONE, NONE).readings()).findings();
        assertThat(findings).extracting(Finding::fault).containsExactly(Fault.HUM, Fault.CRACKLE, Fault.TOO_HOT);
    }

    private Finding distorted(DistortionReading.Verdict verdict, DistortionReading.Stage stage, double probability) {
        return single(new ReadingsSketch().distortion(verdict, stage, OptionalDouble.of(-9), 12, probability));
    }

    private Finding single(ReadingsSketch sketch) {
        List<Finding> findings = judge.judge(sketch.readings()).findings();
        assertThat(findings).hasSize(1);
        return findings.get(0);
    }

    private static java.util.function.Consumer<Finding> is(Fault fault, Severity severity) {
        return finding -> {
            assertThat(finding.fault()).isEqualTo(fault);
            assertThat(finding.severity()).isEqualTo(severity);
        };
    }
}
