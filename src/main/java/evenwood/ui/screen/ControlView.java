package evenwood.ui.screen;

import evenwood.rig.Dial;
import evenwood.rig.Scale;
import evenwood.rig.Setting;
import evenwood.ui.model.DialText;
import evenwood.ui.model.MoveCard;
import evenwood.ui.paint.DialPainter;
import evenwood.ui.scale.DialArc;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.CheckBox;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** One control as it stands: dragged, turned with the arrow keys, or typed. */
final class ControlView {
    private final Surroundings around;
    private final VBox node = new VBox();
    private final Consumer<Setting> changed;
    private Setting setting;

    ControlView(Surroundings around, Setting first) {
        this(around, first, next -> {
            around.rig().set(next);
            around.take().judgeAgain();
        });
    }

    /** @param changed told where it was set to */
    ControlView(Surroundings around, Setting first, Consumer<Setting> changed) {
        this.around = around;
        this.changed = changed;
        setting = first;
        node.getStyleClass().add("control");
        node.setAlignment(Pos.TOP_CENTER);
        node.getChildren().add(Parts.text(first.control().name(), "control-name"));
        first.control().gain().ifPresent(dial -> node.getChildren().add(new Turning(dial, true).view()));
        first.control().frequency().ifPresent(dial -> node.getChildren().add(new Turning(dial, false).view()));
        if (first.control().switched()) {
            node.getChildren().add(onOff());
        }
    }

    Region node() {
        return node;
    }

    private CheckBox onOff() {
        CheckBox box = new CheckBox(around.words().say("position.on"));
        box.setSelected(setting.on());
        box.setOnAction(event -> set(setting.switched(box.isSelected())));
        return box;
    }

    private void set(Setting next) {
        setting = next;
        changed.accept(next);
    }

    /** One of its dials. */
    private final class Turning {
        private final Dial dial;
        private final boolean gain;
        private final Board board;
        private final TextField field = new TextField();
        private final DialPainter painter = new DialPainter(around.ink());
        private final MoveCard.Shape shape;

        Turning(Dial dial, boolean gain) {
            this.dial = dial;
            this.gain = gain;
            double em = around.ink().em();
            shape = dial.scale() == Scale.DB ? MoveCard.Shape.FADER : MoveCard.Shape.KNOB;
            board = new Board(shape == MoveCard.Shape.FADER ? em * 9 : em * 8, shape == MoveCard.Shape.FADER ? em * 9 : em * 7);
            board.setFocusTraversable(true);
            board.getStyleClass().add("dial");
            board.setOnMousePressed(this::drag);
            board.setOnMouseDragged(this::drag);
            board.setOnScroll(event -> step(Math.signum(event.getDeltaY())));
            board.setOnKeyPressed(this::key);
            field.setPrefColumnCount(6);
            field.setAlignment(Pos.CENTER);
            field.setMaxWidth(em * 7);
            field.setAccessibleText(around.words().say("rig.position", setting.control().name()));
            field.setOnAction(event -> typed());
            field.focusedProperty().addListener((is, was, focused) -> {
                if (!focused) {
                    typed();
                }
            });
            show();
        }

        Region view() {
            VBox box = new VBox(board, field);
            box.setAlignment(Pos.CENTER);
            return box;
        }

        private double position() {
            return (gain ? setting.gain() : setting.frequency()).getAsDouble();
        }

        private void turn(double position) {
            double settable = dial.settable(position);
            if (settable != position()) {
                set(gain ? setting.withGain(settable) : setting.withFrequency(settable));
            }
            show();
        }

        private void step(double steps) {
            turn(position() + steps * dial.step());
        }

        private void drag(MouseEvent event) {
            board.requestFocus();
            double em = around.ink().em();
            double part = shape == MoveCard.Shape.FADER
                ? (board.getHeight() - em * 0.8 - event.getY()) / (board.getHeight() - em * 1.6)
                : DialArc.part(event.getX() - board.getWidth() / 2, event.getY() - board.getHeight() / 2);
            turn(dial.least() + Math.max(0, Math.min(1, part)) * (dial.most() - dial.least()));
            event.consume();
        }

        private void key(KeyEvent event) {
            double steps = switch (event.getCode()) {
                case UP, RIGHT -> 1;
                case DOWN, LEFT -> -1;
                case PAGE_UP -> 5;
                case PAGE_DOWN -> -5;
                default -> 0;
            };
            if (steps != 0) {
                step(steps);
                event.consume();
            }
        }

        private void typed() {
            DialText.position(field.getText(), dial).ifPresent(this::turn);
            show();
        }

        private void paint(GraphicsContext g, double width, double height, double part) {
            painter.paint(g, width, height, shape, part, part);
            painter.stops(g, width, height, shape, DialText.say(dial.least(), dial, around.words()), DialText.say(dial.most(), dial, around.words()));
        }

        private void show() {
            double part = DialArc.part(position(), dial.least(), dial.most());
            String says = DialText.say(position(), dial, around.words());
            field.setText(says);
            board.saying(around.words().say("move.says", setting.control().name(), says));
            board.paint((g, width, height) -> paint(g, width, height, part));
        }
    }
}
