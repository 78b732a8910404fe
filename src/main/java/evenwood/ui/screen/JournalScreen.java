package evenwood.ui.screen;

import evenwood.journal.TakeLine;
import evenwood.ui.model.JournalModel;
import evenwood.ui.model.Later;
import evenwood.ui.model.Now;
import evenwood.ui.model.Words;
import java.util.List;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Every take that was kept: find one, repeat it, print it; compare two; follow a reading and the practice over the months. */
final class JournalScreen implements Screen, JournalList.Told {
    private static final double WIDE_EMS = 66;
    private static final double LIST_EMS = 31;
    private static final String FIRST = "take";

    private final Surroundings around;
    private final Words words;
    private final JournalModel model;
    private final JournalList list;
    private final CompareView compare;
    private final List<JournalSection> sections;
    private final ToggleGroup group = new ToggleGroup();
    private final FlowPane tabs = new FlowPane();
    private final VBox place = new VBox();
    private final ScrollPane scrolled;
    private final VBox empty;
    private final VBox content = new VBox();
    private final ScrollPane node;
    private final Watch<Later.Answer<JournalModel.Found>> emptiness;
    private JournalSection open;
    private boolean shown;
    private boolean nothing;
    private boolean wide = true;

    JournalScreen(Surroundings around) {
        this.around = around;
        words = around.words();
        model = around.journal();
        list = new JournalList(around, this);
        compare = new CompareView(around);
        sections = List.of(list.section(), new KeptTakeView(around).section(), new SheetView(around).section(), compare.section(), new TrendView(around).section(),
            new PracticeView(around).section(), new ExportView(around).section());
        sections.forEach(section -> tabs.getChildren().add(tab(section.id())));
        tabs.getStyleClass().add("tabs");
        scrolled = Parts.scrolled(place);
        VBox.setVgrow(scrolled, Priority.ALWAYS);
        empty = Parts.sheet(words.say("journal.empty-title"), Parts.text(words.say("journal.empty")),
            Parts.button("journal-play", words.say("journal.to-play"), () -> around.open().accept("play"), "accent"));
        content.getStyleClass().add("page");
        content.setMinWidth(0);
        node = Parts.scrolled(content);
        node.widthProperty().addListener((is, was, width) -> arrange(width.doubleValue() > around.ink().em() * WIDE_EMS));
        emptiness = new Watch<>(model.found()::answer, answer -> answer.value().ifPresent(found -> showWhether(found.all() == 0)));
        open(model.section());
        lay();
    }

    @Override
    public String id() {
        return "journal";
    }

    @Override
    public Region node() {
        return node;
    }

    @Override
    public void show(Now now) { }

    @Override
    public void opened() {
        model.look();
        shown = true;
        emptiness.start();
        list.watch().start();
        open.watches().forEach(Watch::start);
    }

    @Override
    public void closed() {
        shown = false;
        emptiness.stop();
        list.watch().stop();
        open.watches().forEach(Watch::stop);
    }

    /** Shows answers that have come, without waiting for the next frame. */
    void look() {
        emptiness.look();
        list.watch().look();
        open.watches().forEach(Watch::look);
    }

    /** Opens a part of the page by its name; only what is seen asks for anything. */
    void open(String id) {
        if (open != null) {
            open.watches().forEach(Watch::stop);
        }
        open = sections.stream().filter(each -> each.id().equals(wide && id.equals(JournalList.ID) ? FIRST : id)).findFirst().orElseThrow();
        model.section(id);
        group.getToggles().stream().filter(toggle -> open.id().equals(toggle.getUserData())).findFirst().ifPresent(toggle -> toggle.setSelected(true));
        place.getChildren().setAll(open.node());
        scrolled.setVvalue(0);
        if (shown) {
            open.watches().forEach(Watch::start);
        }
    }

    @Override
    public void look(TakeLine take) {
        model.chosen().open(take.id());
        if (!model.section().equals("sheet")) {
            open(FIRST);
        }
    }

    @Override
    public void picked() {
        compare.show();
        if (model.picked().size() == 2) {
            open("compare");
        }
    }

    private ToggleButton tab(String id) {
        ToggleButton tab = new ToggleButton(words.say("journal.section." + id));
        tab.setId("journal-tab-" + id);
        tab.setUserData(id);
        tab.setToggleGroup(group);
        tab.setMinWidth(Region.USE_PREF_SIZE);
        tab.getStyleClass().add("nav");
        tab.setOnAction(event -> open(id));
        return tab;
    }

    private void showWhether(boolean nowNothing) {
        if (nothing != nowNothing) {
            nothing = nowNothing;
            lay();
        }
    }

    private void arrange(boolean nowWide) {
        if (wide != nowWide) {
            wide = nowWide;
            lay();
        }
    }

    private void lay() {
        double em = around.ink().em();
        content.getChildren().clear();
        scrolled.setContent(null);
        // The list stands beside everything else, or is a part like the others where there is no room beside.
        tabs.getChildren().get(0).setVisible(!wide);
        tabs.getChildren().get(0).setManaged(!wide);
        place.getChildren().clear();
        node.setFitToHeight(wide && !nothing);
        list.node().setMinWidth(wide ? em * LIST_EMS : 0);
        list.node().setMaxWidth(wide ? em * LIST_EMS : Double.MAX_VALUE);
        if (nothing) {
            // Practice can be written down before anything is kept.
            open("practice");
            content.getChildren().addAll(empty, place);
        } else if (wide) {
            VBox right = Parts.column(tabs, scrolled);
            HBox.setHgrow(right, Priority.ALWAYS);
            HBox row = new HBox(list.node(), right);
            row.getStyleClass().add("row");
            VBox.setVgrow(row, Priority.ALWAYS);
            scrolled.setContent(place);
            content.getChildren().add(row);
            open(model.section());
        } else {
            content.getChildren().addAll(tabs, place);
            open(model.section());
        }
    }
}
