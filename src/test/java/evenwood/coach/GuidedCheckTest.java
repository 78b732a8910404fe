package evenwood.coach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.coach.GuidedCheck.Progress;
import evenwood.coach.GuidedCheck.Step;
import evenwood.measure.TakeMeters;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundFormat;
import evenwood.takes.CheckScore;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class GuidedCheckTest {
    private final TakeMeters meters = new TakeMeters(SoundFormat.mono(CheckScore.RATE_HZ), 120);
    private final GuidedCheck check = new GuidedCheck();
    private final AudioBlock block = new AudioBlock(CheckScore.RATE_HZ / 10);
    private final List<Progress> told = new ArrayList<>();
    private long frames;

    @Test
    void aPlayerWhoDoesAsAskedIsLedThroughAllFourSteps() {
        assertThat(hear(CheckScore.rest(3)).step()).isEqualTo(Step.QUIET);
        assertThat(hear(CheckScore.rest(3)).step()).isEqualTo(Step.SOFT);
        assertThat(hear(CheckScore.soft(12)).step()).isEqualTo(Step.HARD);
        assertThat(hear(CheckScore.hard(12)).step()).isEqualTo(Step.PLAY);
        assertThat(hear(CheckScore.usual(30)).step()).isEqualTo(Step.PLAY);
        assertThat(hear(CheckScore.usual(30)).step()).isEqualTo(Step.DONE);
    }

    @Test
    void timeAloneDoesNotFinishAStep() {
        hear(CheckScore.rest(6));
        Progress silentSoft = hear(CheckScore.rest(30));
        assertThat(silentSoft.step()).isEqualTo(Step.SOFT);
        assertThat(silentSoft.done()).isZero();
    }

    @Test
    void playingInTheRestIsToldAndDoesNotCount() {
        Progress progress = hear(CheckScore.usual(12));
        assertThat(progress.step()).isEqualTo(Step.QUIET);
        assertThat(told).extracting(each -> each.asking().key()).contains("guide.quiet-playing");
    }

    @Test
    void hardNotesThatAreHardlyHarderAreAskedForAgain() {
        hear(CheckScore.rest(6));
        hear(CheckScore.soft(12));
        Progress progress = hear(CheckScore.soft(12));
        assertThat(progress.step()).isEqualTo(Step.HARD);
        assertThat(progress.asking().key()).isEqualTo("guide.harder");
        assertThat((double) progress.asking().figures().get(0)).as("dB harder").isCloseTo(0, within(1.5));
        assertThat(hear(CheckScore.hard(10)).step()).as("and then they are heard").isEqualTo(Step.PLAY);
    }

    @Test
    void whoCannotPlayHarderIsNotHeldForEver() {
        hear(CheckScore.rest(6));
        hear(CheckScore.soft(12));
        assertThat(hear(CheckScore.soft(32)).step()).isEqualTo(Step.PLAY);
    }

    @Test
    void whatIsPlayedInAPauseDoesNotCount() {
        hear(CheckScore.rest(6));
        check.pause();
        Progress paused = hear(CheckScore.soft(12));
        assertThat(paused.step()).isEqualTo(Step.SOFT);
        assertThat(paused.paused()).isTrue();
        assertThat(paused.done()).isZero();
        check.resume();
        assertThat(hear(CheckScore.soft(12)).step()).isEqualTo(Step.HARD);
    }

    @Test
    void aStepDoneAgainStartsFromNothing() {
        hear(CheckScore.rest(6));
        hear(CheckScore.soft(12));
        hear(CheckScore.hard(6));
        check.redo(Step.SOFT);
        assertThat(hear(CheckScore.rest(1)).step()).isEqualTo(Step.SOFT);
        assertThat(hear(CheckScore.soft(12)).step()).isEqualTo(Step.HARD);
    }

    /** As a live take does: the newest readings ten times a second, heavy ones too. */
    private Progress hear(float[] samples) {
        Progress progress = null;
        for (int start = 0; start < samples.length; start += block.samples().length) {
            int count = Math.min(block.samples().length, samples.length - start);
            System.arraycopy(samples, start, block.samples(), 0, count);
            block.set(frames, count);
            meters.accept(block);
            frames += count;
            if (start / block.samples().length % 10 == 9 || start + count == samples.length) {
                progress = check.hear(meters.readings("take"));
                told.add(progress);
            }
        }
        return progress;
    }
}
