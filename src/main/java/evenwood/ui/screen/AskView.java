package evenwood.ui.screen;

import evenwood.ui.model.AskModel;
import evenwood.ui.model.Words;
import evenwood.wiring.Question;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Asks one thing after the other, with an answer on every button. */
final class AskView {
    private final Words words;
    private final AskModel model;
    private final Runnable done;
    private final VBox node;

    /** @param done everything was answered, or the player stopped */
    AskView(Surroundings around, AskModel model, Runnable done) {
        this.model = model;
        this.done = done;
        words = around.words();
        node = Parts.sheet("");
        node.setId("ask");
        ask();
    }

    Region node() {
        return node;
    }

    private void ask() {
        Optional<Question> next = model.question();
        if (next.isEmpty()) {
            done.run();
            return;
        }
        Question question = next.get();
        Button back = Parts.button("ask-back", words.say("wiring.ask-back"), () -> {
            model.back();
            ask();
        });
        back.setDisable(!model.canGoBack());
        FlowPane below = new FlowPane(back, Parts.button("ask-stop", words.say("wiring.ask-stop"), done, "flat"));
        below.getStyleClass().add("buttons");
        Label asked = Parts.text(model.words(question, words), "asking");
        node.getChildren().setAll(Parts.text(words.say("wiring.ask-number", model.number()), "quiet"), asked);
        node.getChildren().addAll(answers(question));
        node.getChildren().add(below);
    }

    private List<Node> answers(Question question) {
        return switch (question.kind()) {
            case ONE -> List.of(buttons(question.options().stream().map(option -> big(model.words(question, option, words), option.id())).toList()));
            case YES_NO -> List.of(buttons(List.of(big(words.say("wiring.yes"), "yes"), big(words.say("wiring.no"), "no"))));
            case YES_NO_IF_KNOWN -> List.of(buttons(List.of(big(words.say("wiring.yes"), "yes"), big(words.say("wiring.no"), "no"),
                big(words.say("wiring.do-not-know"), ""))));
            case MANY -> many(question);
            case NUMBER -> typed(false);
            case NUMBER_IF_KNOWN, TEXT -> typed(question.kind() == Question.Kind.NUMBER_IF_KNOWN);
        };
    }

    private List<Node> many(Question question) {
        List<ToggleButton> toggles = new ArrayList<>();
        for (Question.Option option : question.options()) {
            ToggleButton toggle = new ToggleButton(model.words(question, option, words));
            toggle.setUserData(option.id());
            toggle.getStyleClass().add("big-answer");
            toggle.setWrapText(true);
            toggles.add(toggle);
        }
        Button next = Parts.button("ask-next", words.say("wiring.ask-next"), () -> answer(toggles.stream().filter(ToggleButton::isSelected)
            .map(toggle -> (String) toggle.getUserData()).collect(Collectors.joining(","))), "accent");
        return List.of(buttons(toggles), next);
    }

    private List<Node> typed(boolean mayBeUnknown) {
        TextField field = new TextField();
        field.setId("ask-number");
        field.setPrefColumnCount(8);
        field.getStyleClass().add("big-field");
        Label again = Parts.text("", "quiet");
        Runnable take = () -> {
            if (!answer(field.getText())) {
                again.setText(words.say("wiring.ask-again"));
            }
        };
        field.setOnAction(event -> take.run());
        FlowPane row = new FlowPane(field, Parts.button("ask-next", words.say("wiring.ask-next"), take, "accent"));
        row.getStyleClass().add("buttons");
        if (mayBeUnknown) {
            row.getChildren().add(big(words.say("wiring.do-not-know"), ""));
        }
        return List.of(row, again);
    }

    private Button big(String name, String answer) {
        Button button = Parts.button("answer-" + answer, name, () -> answer(answer), "big-answer");
        button.setMinWidth(0);
        button.setWrapText(true);
        return button;
    }

    private static FlowPane buttons(List<? extends Node> all) {
        FlowPane pane = new FlowPane();
        pane.getStyleClass().add("buttons");
        pane.getChildren().addAll(all);
        return pane;
    }

    private boolean answer(String answer) {
        boolean understood = model.answer(answer);
        if (understood) {
            ask();
        }
        return understood;
    }
}
