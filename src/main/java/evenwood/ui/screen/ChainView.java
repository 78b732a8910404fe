package evenwood.ui.screen;

import evenwood.ui.model.ChainPicture;
import evenwood.ui.paint.ChainPainter;
import evenwood.ui.scale.ChainPlaces;
import evenwood.ui.scale.ChainPlaces.Place;
import java.util.List;
import java.util.Optional;
import javafx.scene.Cursor;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;

/** The chain to look at, point at, and reorder by dragging or with the keys. */
final class ChainView {
    /** What the chain is told. */
    interface Told {
        void joint(int number);

        void box(int place);

        void end(ChainPicture.Kind kind);

        void move(int box, int by);
    }

    private static final double DRAG_BEGINS_PX = 6;

    private final Surroundings around;
    private final Told told;
    private final Board board;
    private final ChainPainter painter;
    private ChainPicture picture;
    private ChainPlaces places = ChainPlaces.of(List.of(), 1, 1);
    private int joint;
    private int box = -1;
    private double pressed = Double.NaN;
    private double dragged;

    ChainView(Surroundings around, Told told) {
        this.around = around;
        this.told = told;
        painter = new ChainPainter(around.ink());
        board = new Board(around.ink().em() * 20, around.ink().em() * 8);
        board.setId("chain");
        board.getStyleClass().add("chain");
        board.setFocusTraversable(true);
        board.widthProperty().addListener((is, was, width) -> place());
        board.setOnMouseMoved(this::point);
        board.setOnMousePressed(this::press);
        board.setOnMouseDragged(this::drag);
        board.setOnMouseReleased(this::release);
        board.setOnKeyPressed(this::key);
    }

    Region node() {
        return board;
    }

    /** @param chosenJoint 0 for none  @param chosenBox −1 for none */
    void show(ChainPicture chain, int chosenJoint, int chosenBox, String saying) {
        picture = chain;
        joint = chosenJoint;
        box = chosenBox;
        dragged = 0;
        board.saying(saying);
        place();
    }

    private void place() {
        if (picture == null || board.getWidth() <= 0) {
            return;
        }
        places = ChainPlaces.of(picture.ways().stream().map(way -> way.things().size()).toList(), board.getWidth(), around.ink().em());
        board.setMinHeight(places.heightPx());
        board.setPrefHeight(places.heightPx());
        board.paint((g, width, height) -> painter.paint(g, picture, places, joint, box, dragged, Optional.empty()));
    }

    private void press(MouseEvent event) {
        board.requestFocus();
        pressed = Double.NaN;
        for (int way = 0; way < picture.ways().size(); way++) {
            ChainPicture.Way line = picture.ways().get(way);
            for (int i = 0; i < line.joints().size(); i++) {
                if (places.joints().get(way).get(i).holds(event.getX(), event.getY())) {
                    told.joint(line.joints().get(i).number());
                    return;
                }
            }
            for (int i = 0; i < line.things().size(); i++) {
                if (places.things().get(way).get(i).holds(event.getX(), event.getY())) {
                    ChainPicture.Thing thing = line.things().get(i);
                    pressed = along(event);
                    if (thing.box() >= 0) {
                        told.box(thing.box());
                    } else if (way == 0) {
                        told.end(thing.kind());
                    }
                    return;
                }
            }
        }
    }

    private void drag(MouseEvent event) {
        double by = along(event) - pressed;
        if (box >= 0 && Math.abs(by) > DRAG_BEGINS_PX) {
            dragged = by;
            Optional<Place> landing = places.landing(box, places.dropped(box, boxes(), event.getX(), event.getY()));
            board.paint((g, width, height) -> painter.paint(g, picture, places, joint, box, dragged, landing));
        }
    }

    private int boxes() {
        return (int) picture.ways().get(0).things().stream().filter(thing -> thing.box() >= 0).count();
    }

    /** What can be dragged or clicked shows itself under the pointer. */
    private void point(MouseEvent event) {
        boolean overBox = false;
        boolean overJoint = false;
        for (int way = 0; picture != null && way < picture.ways().size(); way++) {
            for (int i = 0; i < picture.ways().get(way).things().size(); i++) {
                overBox |= picture.ways().get(way).things().get(i).box() >= 0 && places.things().get(way).get(i).holds(event.getX(), event.getY());
            }
            overJoint |= places.joints().get(way).stream().anyMatch(place -> place.holds(event.getX(), event.getY()));
        }
        board.setCursor(overBox ? Cursor.OPEN_HAND : overJoint ? Cursor.HAND : Cursor.DEFAULT);
    }

    private void release(MouseEvent event) {
        if (dragged == 0 || box < 0) {
            return;
        }
        int to = places.dropped(box, boxes(), event.getX(), event.getY());
        dragged = 0;
        told.move(box, to - box);
    }

    private double along(MouseEvent event) {
        return places.across() ? event.getX() : event.getY();
    }

    /** Arrows go from joint to joint and over the boxes between; with Shift they move the chosen box. */
    private void key(KeyEvent event) {
        int step = switch (event.getCode()) {
            case LEFT, UP -> -1;
            case RIGHT, DOWN -> 1;
            default -> 0;
        };
        if (step == 0 || picture == null) {
            return;
        }
        event.consume();
        if (event.isShiftDown() && box >= 0) {
            told.move(box, step);
        } else if (box >= 0) {
            told.joint(step < 0 ? box + 1 : box + 2);
        } else {
            int next = joint + step;
            int boxBetween = step > 0 ? joint - 1 : joint - 2;
            boolean isBox = boxBetween >= 0 && boxBetween < picture.ways().get(0).things().size() - 2 && joint <= picture.ways().get(0).joints().size();
            if (isBox) {
                told.box(boxBetween);
            } else if (next >= 1 && next <= picture.joints()) {
                told.joint(next);
            }
        }
    }
}
