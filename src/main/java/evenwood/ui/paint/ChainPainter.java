package evenwood.ui.paint;

import evenwood.ui.model.ChainPicture;
import evenwood.ui.scale.ChainPlaces;
import evenwood.ui.scale.ChainPlaces.Place;
import evenwood.wiring.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** Draws the chain thing by thing, with the verdict as mark and word at every joint. */
public final class ChainPainter {
    private final Ink ink;

    public ChainPainter(Ink ink) {
        this.ink = ink;
    }

    /**
     * @param chosenJoint the number of the chosen joint; 0 for none
     * @param chosenBox   the place of the chosen box; −1 for none
     * @param draggedPx   how far the chosen box was dragged along the chain
     * @param landing     where it lands when it is let go now; empty when it stays
     */
    public void paint(GraphicsContext g, ChainPicture chain, ChainPlaces places, int chosenJoint, int chosenBox, double draggedPx, Optional<Place> landing) {
        for (int way = 0; way < chain.ways().size(); way++) {
            ChainPicture.Way line = chain.ways().get(way);
            for (int i = 0; i < line.joints().size(); i++) {
                joint(g, line.joints().get(i), places.joints().get(way).get(i), places.across(), line.joints().get(i).number() == chosenJoint);
            }
            if (way == 0) {
                landing.ifPresent(place -> landing(g, place, places.across()));
            }
            for (int i = 0; i < line.things().size(); i++) {
                ChainPicture.Thing thing = line.things().get(i);
                boolean chosen = thing.box() >= 0 && thing.box() == chosenBox;
                Place place = places.things().get(way).get(i);
                double shift = chosen ? draggedPx : 0;
                thing(g, thing, places.across() ? new Place(place.x() + shift, place.y(), place.width(), place.height())
                    : new Place(place.x(), place.y() + shift, place.width(), place.height()), chosen);
            }
        }
    }

    private void landing(GraphicsContext g, Place place, boolean across) {
        double thick = ink.em() * 0.5;
        g.setFill(ink.heard());
        if (across) {
            g.fillRoundRect(place.middleX() - thick / 2, place.y(), thick, place.height(), thick, thick);
        } else {
            g.fillRoundRect(place.x(), place.middleY() - thick / 2, place.width(), thick, thick, thick);
        }
    }

    private void thing(GraphicsContext g, ChainPicture.Thing thing, Place place, boolean chosen) {
        double em = ink.em();
        double round = thing.kind() == ChainPicture.Kind.PICKUP ? place.height() * 0.7 : em * 0.8;
        g.setFill(chosen ? mixed(ink.heard(), ink.sheet(), 0.82) : ink.trough());
        g.fillRoundRect(place.x(), place.y(), place.width(), place.height(), round, round);
        g.setStroke(chosen ? ink.heard() : ink.faint());
        g.setLineWidth(chosen ? 3 : 1.2);
        g.setLineDashes(thing.kind() == ChainPicture.Kind.THRU ? new double[] {em * 0.4, em * 0.3} : new double[0]);
        g.strokeRoundRect(place.x(), place.y(), place.width(), place.height(), round, round);
        g.setLineDashes();
        if (thing.kind() == ChainPicture.Kind.INPUT) {
            g.setFill(ink.faint());
            g.fillRect(place.x(), place.y() + em * 0.5, em * 0.3, place.height() - em);
        }
        double inner = place.width() - em * (thing.kind() == ChainPicture.Kind.PICKUP ? 2 : 1.2);
        List<String> name = lines(thing.name(), inner, 0.92, true, Math.max(1, (int) (place.height() / (em * 1.2)) - thing.standing().size()));
        double line = em * 1.16;
        double y = place.middleY() - (name.size() + thing.standing().size() - 1) * line / 2;
        for (String words : name) {
            ink.write(g, words, place.middleX(), y, TextAlignment.CENTER, 0.92, true, ink.text());
            y += line;
        }
        for (String words : thing.standing()) {
            ink.write(g, ink.fitted(words, inner, 0.85, false), place.middleX(), y, TextAlignment.CENTER, 0.85, false, ink.faint());
            y += line;
        }
    }

    private void joint(GraphicsContext g, ChainPicture.Joint joint, Place place, boolean across, boolean chosen) {
        double em = ink.em();
        if (chosen) {
            g.setFill(mixed(ink.heard(), ink.sheet(), 0.88));
            g.fillRect(place.x() + 1, place.y() + 1, place.width() - 2, place.height() - 2);
            g.setFill(ink.heard());
            g.fillRect(across ? place.x() + em * 0.3 : place.x() + 1, across ? place.y() + place.height() - 3 : place.y() + em * 0.3,
                across ? place.width() - em * 0.6 : 3, across ? 3 : place.height() - em * 0.6);
        }
        g.setStroke(FitMark.colour(ink, joint.fit()));
        g.setLineWidth(em * 0.28);
        g.setLineDashes(joint.fit() == Fit.RIGHT ? new double[0] : new double[] {em * 0.7, em * 0.4});
        double mark = em * 0.85;
        double textPx = across ? place.width() - em * 0.6 : place.width() - em * 5;
        if (across) {
            double y = place.y() + place.height() * 0.5;
            g.strokeLine(place.x(), y, place.x() + place.width(), y);
            g.setLineDashes();
            FitMark.paint(g, ink, joint.fit(), place.middleX(), y, mark);
            List<String> cable = lines(joint.cable(), textPx, 0.8, false, 2);
            double top = y - mark - em * 0.7 - (cable.size() - 1) * em;
            for (String words : cable) {
                ink.write(g, words, place.middleX(), top, TextAlignment.CENTER, 0.8, false, ink.faint());
                top += em;
            }
            ink.write(g, ink.fitted(joint.word(), textPx, 0.92, true), place.middleX(), y + mark + em * 0.75, TextAlignment.CENTER, 0.92, true, ink.text());
            ink.write(g, joint.level(), place.middleX(), y + mark + em * 1.8, TextAlignment.CENTER, 0.8, false, ink.faint());
        } else {
            double x = place.x() + em * 2;
            g.strokeLine(x, place.y(), x, place.y() + place.height());
            g.setLineDashes();
            FitMark.paint(g, ink, joint.fit(), x, place.middleY(), mark);
            double left = x + em * 1.6;
            ink.write(g, ink.fitted(joint.word(), textPx, 1, true), left, place.middleY() - em * 1.15, TextAlignment.LEFT, 1, true, ink.text());
            ink.write(g, ink.fitted(joint.cable(), textPx, 0.85, false), left, place.middleY() + em * 0.1, TextAlignment.LEFT, 0.85, false, ink.faint());
            ink.write(g, joint.level(), left, place.middleY() + em * 1.25, TextAlignment.LEFT, 0.85, false, ink.faint());
        }
    }

    /** Broken at spaces; the last line ends in an ellipsis if there is more. */
    private List<String> lines(String text, double widthPx, double ems, boolean bold, int most) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.split(" ")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && lines.size() < most - 1 && ink.width(longer, ems, bold) > widthPx) {
                lines.add(line);
                line = word;
            } else {
                line = longer;
            }
        }
        lines.add(line);
        lines.replaceAll(each -> ink.fitted(each, widthPx, ems, bold));
        return lines;
    }

    private static Color mixed(Color colour, Color ground, double part) {
        return colour.interpolate(ground, part);
    }
}
