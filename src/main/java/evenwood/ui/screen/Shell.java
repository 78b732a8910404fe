package evenwood.ui.screen;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import evenwood.journal.JournalFile;
import evenwood.ui.model.Choices;
import evenwood.ui.model.CurrentTake;
import evenwood.ui.model.Headline;
import evenwood.ui.model.HuntModel;
import evenwood.ui.model.JournalModel;
import evenwood.ui.model.Leading;
import evenwood.ui.model.Now;
import evenwood.ui.model.PracticeLog;
import evenwood.ui.model.RigModel;
import evenwood.ui.model.Words;
import evenwood.ui.paint.Ink;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javafx.animation.AnimationTimer;
import javafx.application.Application;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;

/** The frame round every page: navigation, one calm sentence, language, theme, text size, keys, and the clock of the pictures. */
public final class Shell {
    static final double LEAST_WIDTH = 640;
    static final double LEAST_HEIGHT = 480;
    private static final double FIRST_WIDTH = 1280;
    private static final double FIRST_HEIGHT = 800;
    private static final double SCALE_STEP = 0.25;

    private final Stage stage;
    private final CurrentTake take;
    private final RigModel rig;
    private final Choices choices;
    private final Leading leading;
    private final HuntModel hunt;
    private final JournalModel journal;
    private final PracticeLog practice;
    private final StackPane root = new StackPane();
    private final Scene scene = new Scene(root, FIRST_WIDTH, FIRST_HEIGHT);
    private final AnimationTimer frames = new AnimationTimer() {
        @Override
        public void handle(long nanos) {
            follow();
        }
    };
    private Surroundings around;
    private List<Screen> screens = List.of();
    private Screen open;
    private Navigation navigation;
    private Label headline;
    private BorderPane page;
    private StandView stand;
    private long shownNumber = -1;
    private Headline told;
    private boolean held;

    public Shell(Stage stage, CurrentTake take, RigModel rig, Choices choices) {
        this.stage = stage;
        this.take = take;
        this.rig = rig;
        this.choices = choices;
        leading = new Leading(take, rig);
        hunt = new HuntModel(rig);
        String journalFile = choices.get("journal.file", "");
        journal = new JournalModel(journalFile.isEmpty() ? JournalFile.usual() : Path.of(journalFile));
        practice = new PracticeLog(take::now, () -> rig.chosen(RigModel.Part.INSTRUMENT), choices, journal.file());
        practice.start();
        scene.getStylesheets().add(Shell.class.getResource("/evenwood/ui/evenwood.css").toExternalForm());
        scene.addEventFilter(KeyEvent.KEY_PRESSED, new Shortcuts(this)::press);
        stage.setScene(scene);
        stage.setMinWidth(LEAST_WIDTH);
        stage.setMinHeight(LEAST_HEIGHT);
        stage.showingProperty().addListener((is, was, showing) -> run(showing));
        stage.iconifiedProperty().addListener((is, was, hidden) -> run(!hidden));
        dress("");
    }

    public void show() {
        stage.setWidth(choices.number("window.width", FIRST_WIDTH));
        stage.setHeight(choices.number("window.height", FIRST_HEIGHT));
        stage.setOnHiding(event -> {
            practice.close();
            choices.put("window.width", Math.round(stage.getWidth()));
            choices.put("window.height", Math.round(stage.getHeight()));
        });
        stage.show();
    }

    /** Opens the page with that id. */
    public void open(String id) {
        Screen next = screens.stream().filter(screen -> screen.id().equals(id)).findFirst().orElse(screens.get(0));
        if (open != null) {
            open.closed();
        }
        open = next;
        navigation.mark(next.id());
        page.setCenter(next.node());
        choices.put("page", next.id());
        next.opened();
        shownNumber = -1;
        follow();
    }

    HuntModel hunt() {
        return hunt;
    }

    JournalModel journal() {
        return journal;
    }

    Surroundings around() {
        return around;
    }

    Screen opened() {
        return open;
    }

    Scene scene() {
        return scene;
    }

    /** Shows the newest there is, if it is newer than what is shown. */
    void follow() {
        Now now = take.now();
        if (!held && (now.number() != shownNumber || leading.isWaiting()) && open != null) {
            shownNumber = now.number();
            present(now);
        }
    }

    /** Shows this moment, wherever it is from. */
    void present(Now now) {
        if (!held) {
            leading.hear(now);
        }
        Headline line = leading.headline(Headline.of(now, open.id(), around.words()), open.id(), around.words());
        if (!line.equals(told)) {
            told = line;
            tell(line);
        }
        if (stand.isVisible()) {
            stand.show(now, leading.asking(around.words()));
        } else {
            open.show(now);
        }
    }

    private void tell(Headline line) {
        headline.setText(line.sentence());
        headline.getStyleClass().setAll("label", "headline", "headline-" + line.tone().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }

    /** While held, only what is presented is shown: for pictures of one moment in every dress. */
    void hold(boolean nowHeld) {
        held = nowHeld;
    }

    private void run(boolean visible) {
        if (visible) {
            frames.start();
        } else {
            frames.stop();
        }
    }

    /** Builds everything in the chosen language, theme and text size. */
    void dress(String page) {
        if (open != null) {
            open.closed();
            open = null;
        }
        boolean dark = choices.get("theme", "light").equals("dark");
        Words words = Words.in(Locale.forLanguageTag(choices.get("language", Locale.getDefault().getLanguage())));
        around = new Surroundings(take, rig, leading.guide(), leading.learn(), hunt, journal, practice, choices, words, new Ink(dark, textScale()), this::open);
        Application.setUserAgentStylesheet(dark ? new PrimerDark().getUserAgentStylesheet() : new PrimerLight().getUserAgentStylesheet());
        stage.setTitle(words.say("window.title"));
        screens = Screens.all(around);
        lay(dark);
        open(page.isEmpty() ? screens.get(0).id() : page);
    }

    private void lay(boolean dark) {
        navigation = new Navigation(around, screens, this::changed);
        told = null;
        headline = Parts.text("", "headline");
        headline.setMaxWidth(Double.MAX_VALUE);
        headline.setId("headline");
        page = new BorderPane();
        page.setTop(Parts.column(navigation.node(), headline, new LikedLine(around).node()));
        stand = new StandView(around, this::leaveStand);
        root.getChildren().setAll(page, stand.node());
        root.getStyleClass().setAll("root", "evenwood", dark ? "night" : "day");
        root.setStyle(String.format(Locale.ROOT, "-fx-font-size: %.1fpx;", around.ink().em()));
    }

    /** Something of language, theme or size was chosen. */
    private void changed() {
        dress(open == null ? "" : open.id());
    }

    private double textScale() {
        return Math.max(1, Math.min(2, choices.number("text.scale", 1)));
    }

    /** Another text size, by so many steps. */
    void scale(int steps) {
        choices.put("text.scale", Math.max(1, Math.min(2, textScale() + steps * SCALE_STEP)));
        changed();
    }

    /** Dark where it was light, and the other way round. */
    void turnTheme() {
        choices.put("theme", around.ink().isDark() ? "light" : "dark");
        changed();
    }

    /** The page at that place of the navigation, if there is one. */
    void openAt(int place) {
        if (place < screens.size()) {
            open(screens.get(place).id());
        }
    }

    boolean isStanding() {
        return stand.isVisible();
    }

    void toggleStand() {
        if (stand.isVisible()) {
            leaveStand();
        } else {
            stand.setVisible(true);
            page.setVisible(false);
            shownNumber = -1;
            follow();
        }
    }

    void leaveStand() {
        stand.setVisible(false);
        page.setVisible(true);
        shownNumber = -1;
        follow();
    }
}
