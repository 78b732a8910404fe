package evenwood.ui.screen;

import evenwood.coach.Assessment;
import evenwood.coach.Move;
import evenwood.ui.model.BalancePicture;
import evenwood.ui.model.LevelPicture;
import evenwood.ui.model.MoveCard;
import evenwood.ui.model.Now;
import evenwood.ui.model.SoundChoice;
import evenwood.ui.model.TonePicture;
import evenwood.ui.model.ToneWords;
import evenwood.ui.model.TunerPicture;
import evenwood.ui.model.Words;
import evenwood.ui.paint.LadderPainter;
import evenwood.ui.paint.TonePainter;
import evenwood.ui.paint.TunerPainter;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Play and see: level, tone, note, what to turn, and the last minutes. */
final class PlayScreen implements Screen {
    /** Narrower than so many ems, everything stands in one column. */
    private static final double WIDE_EMS = 72;

    private final Surroundings around;
    private final double em;
    private final Board ladder;
    private final Board tone;
    private final Board tuner;
    private final StripView strip;
    private final Label toneWords = Parts.text("", "quiet");
    private final HBox balance = new HBox();
    private final VBox moves = Parts.column();
    private final FindingList findings;
    private final Hearing hearing;
    private final KeepButton keep;
    private final ProgressBar progress = new ProgressBar();
    private final HBox checking;
    private final VBox levelSheet;
    private final VBox tuneSheet;
    private final VBox toneSheet;
    private final VBox advice;
    private final VBox content = new VBox();
    private final ScrollPane node;
    private final LadderPainter ladderPainter;
    private final TonePainter tonePainter;
    private final TunerPainter tunerPainter;
    private Boolean wide;
    private Optional<Assessment> shown = Optional.empty();

    PlayScreen(Surroundings around) {
        this.around = around;
        Words words = around.words();
        em = around.ink().em();
        ladder = new Board(em * 16, em * 20);
        tone = new Board(em * 20, em * 17);
        tuner = new Board(em * 11, em * 8);
        strip = new StripView(around);
        ladderPainter = new LadderPainter(around.ink(), words.say("level.mark.window"), words.say("level.mark.onset"), words.say("level.mark.floor"),
            words.say("level.mark.highest"), words.say("level.mark.loudness"), words.say("unit.db"));
        tonePainter = new TonePainter(around.ink(), words::frequency);
        tunerPainter = new TunerPainter(around.ink());
        findings = new FindingList(around);
        hearing = new Hearing(around);
        checking = Parts.row(progress, Parts.button("cancel", words.say("check.cancel"), around.take()::cancel));
        balance.getStyleClass().add("balance");
        levelSheet = Parts.sheet(words.say("level.title"), ladder);
        tuneSheet = Parts.sheet(words.say("tuner.title"), tuner);
        toneSheet = Parts.sheet(words.say("tone.title"), tone, toneWords, balance);
        keep = new KeepButton(around);
        advice = Parts.sheet("", checking, moves, hearing.node(), findings.node(), keep.node());
        content.getStyleClass().add("page");
        content.setMinWidth(0);
        node = Parts.scrolled(content);
        node.widthProperty().addListener((is, was, width) -> arrange(width.doubleValue() > em * WIDE_EMS));
        checking.setVisible(false);
        checking.setManaged(false);
        arrange(true);
        showEmpty();
    }

    @Override
    public String id() {
        return "play";
    }

    @Override
    public Region node() {
        return node;
    }

    @Override
    public void opened() {
        keep.opened();
    }

    @Override
    public void closed() {
        keep.closed();
        hearing.stop();
    }

    @Override
    public void show(Now now) {
        Words words = around.words();
        LevelPicture level = LevelPicture.of(now, words);
        ladder.paint(level, level.verdict() + " " + level.highestText(), (g, width, height) -> ladderPainter.paint(g, width, height, level));
        TunerPicture note = TunerPicture.of(now, words, around.rig().rig().map(each -> each.instrument().lowestHz()).orElse(0.0));
        tuner.paint(note, note.note() + " " + note.words(), (g, width, height) -> tunerPainter.paint(g, width, height, note));
        strip.show();
        tuneSheet.setVisible(now.isListening());
        tuneSheet.setManaged(now.isListening());
        checking.setVisible(now.isChecking());
        checking.setManaged(now.isChecking());
        progress.setProgress(Math.max(0, now.progress()));
        if (now.assessment().isEmpty() && shown.isPresent() || now.assessment().isPresent() && !now.assessment().equals(shown)) {
            shown = now.assessment();
            keep.show(now.isLive() ? Optional.empty() : shown);
            showAssessment();
        }
    }

    private void showEmpty() {
        show(Now.NOTHING);
        showAssessment();
    }

    private void showAssessment() {
        Words words = around.words();
        TonePicture picture = TonePicture.of(shown, around.take().before(), around.rig().rig(), words);
        tone.saying(words.say("tone.title"));
        tone.paint((g, width, height) -> tonePainter.paint(g, width, height, picture));
        toneWords.setText(ToneWords.of(picture, shown, words));
        showBalance();
        moves.getChildren().setAll(cards());
        if (shown.isPresent()) {
            findings.show(shown.get());
        } else {
            findings.node().setVisible(false);
        }
        findings.node().setVisible(shown.isPresent());
        findings.node().setManaged(shown.isPresent());
    }

    private void showBalance() {
        balance.getChildren().clear();
        for (BalancePicture.Part part : BalancePicture.of(shown, around.words()).parts()) {
            VBox cell = new VBox(Parts.text(part.name(), "balance-name"), Parts.text(part.words(), "balance-words"));
            HBox.setHgrow(cell, Priority.ALWAYS);
            cell.setMaxWidth(Double.MAX_VALUE);
            balance.getChildren().add(cell);
        }
    }

    private List<Node> cards() {
        Words words = around.words();
        if (shown.isEmpty()) {
            return List.of(Parts.text(words.say("moves.title"), "sheet-title"), Parts.text(words.say("moves.empty"), "quiet"),
                Parts.text(words.say("moves.first")), Parts.text(words.say("moves.second")), Parts.text(words.say("moves.third")),
                Parts.button("choose-source", words.say("moves.choose"), () -> around.open().accept("source"), "accent"),
                Parts.button("play-demo", words.say("source.demo-check"), () -> around.take().start(new SoundChoice.DemoChecked())));
        }
        List<Move> list = shown.get().moves();
        if (list.isEmpty()) {
            return List.of(Parts.text(words.say("moves.title"), "sheet-title"),
                Parts.text(words.say(shown.get().readings().hasPlaying() ? "moves.none" : "moves.play"), "quiet"));
        }
        List<Node> nodes = new java.util.ArrayList<>();
        nodes.add(Parts.text(words.say("moves.title"), "sheet-title"));
        for (Move move : list) {
            MoveCard card = MoveCard.of(move, around.rig().rig(), words);
            nodes.add(new MoveCardView(around, card, () -> done(list.subList(0, move.order())), () -> hearing.play(List.of(move)), MoveCard.isHeard(move)).node());
        }
        return nodes;
    }

    private void done(List<Move> made) {
        int count = made.size();
        around.take().again(count);
        around.rig().turned(made);
    }

    /** Side by side where there is room, one under the other where there is not. */
    private void arrange(boolean nowWide) {
        if (wide != null && wide == nowWide) {
            return;
        }
        wide = nowWide;
        content.getChildren().clear();
        node.setFitToHeight(nowWide);
        for (Region grown : List.of(tone, ladder)) {
            VBox.setVgrow(grown, Priority.ALWAYS);
        }
        if (nowWide) {
            VBox left = Parts.column(levelSheet, tuneSheet);
            VBox middle = Parts.column(toneSheet, strip.node());
            VBox.setVgrow(levelSheet, Priority.ALWAYS);
            VBox.setVgrow(toneSheet, Priority.ALWAYS);
            HBox.setHgrow(middle, Priority.ALWAYS);
            left.setMinWidth(em * 18.5);
            left.setMaxWidth(em * 18.5);
            ScrollPane scrolled = Parts.scrolled(advice);
            scrolled.setFitToHeight(true);
            scrolled.setMinWidth(em * 27);
            scrolled.setPrefWidth(em * 30);
            HBox row = new HBox(left, middle, scrolled);
            row.getStyleClass().add("row");
            VBox.setVgrow(row, Priority.ALWAYS);
            content.getChildren().add(row);
        } else {
            HBox top = new HBox(levelSheet, tuneSheet);
            top.getStyleClass().add("row");
            HBox.setHgrow(levelSheet, Priority.ALWAYS);
            HBox.setHgrow(tuneSheet, Priority.ALWAYS);
            content.getChildren().addAll(advice, top, toneSheet, strip.node());
        }
    }
}
