package evenwood.ui.screen;

import evenwood.coach.hunt.NoiseParts;
import evenwood.live.NoiseSoFar;
import evenwood.measure.TakeReadings;
import evenwood.report.HuntPicture;
import evenwood.report.Sentences;
import evenwood.ui.model.HuntModel;
import evenwood.ui.model.NoiseBars;
import evenwood.ui.model.Now;
import evenwood.ui.model.Words;
import evenwood.ui.paint.NoiseBarsPainter;
import java.util.List;
import java.util.Optional;
import javafx.animation.AnimationTimer;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.VBox;

/** The noise as bars with how sure they are: before and after a change, and moving while it is listened. */
final class HuntBars {
    private static final double NANOS = 1e9;

    private final Words words;
    private final HuntModel model;
    private final Board board;
    private final NoiseBarsPainter painter;
    private final ProgressBar progress;
    private final Label meaning = Parts.text("", "quiet");
    private final Label outcome = Parts.text("", "verdict");
    private final VBox sheet;
    private NoiseBars shown = new NoiseBars(List.of(), List.of(), false);
    /** Of the take on the other pages, before the hunt has measured anything. */
    private Optional<NoiseParts> heard = Optional.empty();
    private long last;
    private final AnimationTimer frames = new AnimationTimer() {
        @Override
        public void handle(long nanos) {
            frame(nanos);
        }
    };

    /** @param progress of the measurement under way */
    HuntBars(Surroundings around, ProgressBar progress) {
        this.progress = progress;
        words = around.words();
        model = around.hunt();
        double em = around.ink().em();
        board = new Board(em * 20, em * 19);
        painter = new NoiseBarsPainter(around.ink(), words.say("hunt.before"), words.say("hunt.after"), level -> words.say("number.with-unit", words.number(level, 0),
            words.say("unit.dbfs")));
        sheet = Parts.sheet(words.say("hunt.noise"), board, meaning, outcome);
    }

    VBox node() {
        return sheet;
    }

    void opened() {
        last = 0;
        frames.start();
    }

    void closed() {
        frames.stop();
    }

    private void frame(long nanos) {
        NoiseBars next = newest();
        double seconds = last == 0 ? 0 : (nanos - last) / NANOS;
        last = nanos;
        progress.setProgress(model.soFar().filter(heard -> model.listening().isWaiting()).map(NoiseSoFar::done).orElse(ProgressBar.INDETERMINATE_PROGRESS));
        NoiseBars glided = shown.towards(next, seconds);
        if (!glided.equals(shown)) {
            show(glided);
        }
    }

    /** The newest of the take that is heard. */
    void hear(Now now) {
        heard = now.readings().map(TakeReadings::noise).filter(noise -> Double.isFinite(noise.floorDbfs())).map(NoiseParts::of);
    }

    /** At once, without gliding there. */
    void show() {
        show(newest());
    }

    private void show(NoiseBars bars) {
        shown = bars;
        boolean there = !bars.before().isEmpty();
        sheet.setVisible(there);
        sheet.setManaged(there);
        if (!there) {
            return;
        }
        board.paint((g, width, height) -> painter.paint(g, width, height, bars));
        say(bars);
    }

    private void say(NoiseBars bars) {
        boolean begun = model.progress().isPresent();
        meaning.setText(words.say(bars.moving() ? "hunt.bars-moving" : !begun ? "hunt.bars-heard" : bars.after().isEmpty() ? "hunt.bars" : "hunt.bars-both"));
        String told = bars.moving() ? "" : model.picture(words).map(this::told).orElse("");
        Parts.tell(outcome, told);
        board.saying(meaning.getText() + " " + told);
    }

    private String told(HuntPicture picture) {
        String hunted = picture.noise().stream().filter(bar -> bar.part() == picture.hunted()).findFirst().map(HuntPicture.Bar::word).orElse("");
        return lastStep(picture).map(step -> HuntSteps.outcome(hunted, step, words)).orElseGet(() -> words.say("hunt.hunted", hunted));
    }

    /** What is heard so far if it is being listened, otherwise what was measured last. */
    private NoiseBars newest() {
        Optional<HuntPicture> picture = model.picture(words);
        if (model.listening().isWaiting()) {
            List<HuntPicture.Bar> heard = model.soFar().map(each -> HuntPicture.bars(each.parts(), Sentences.in(words.locale()))).orElse(List.of());
            return picture.map(each -> new NoiseBars(each.noise(), heard, true)).orElseGet(() -> new NoiseBars(heard, List.of(), true));
        }
        return picture.map(each -> lastStep(each).map(step -> new NoiseBars(step.before(), step.after(), false))
            .orElseGet(() -> new NoiseBars(each.noise(), List.of(), false)))
            .orElseGet(() -> new NoiseBars(heard.map(parts -> HuntPicture.bars(parts, Sentences.in(words.locale()))).orElse(List.of()), List.of(), false));
    }

    private static Optional<HuntPicture.Step> lastStep(HuntPicture picture) {
        return picture.steps().isEmpty() ? Optional.empty() : Optional.of(picture.steps().get(picture.steps().size() - 1));
    }
}
