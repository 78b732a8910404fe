package evenwood.ui.scale;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where the things of a chain and the joints between them stand: beside each other where the width allows it, otherwise one
 * under the other.
 *
 * @param across   whether they stand side by side
 * @param things   of each way, in order
 * @param joints   of each way: the room between two things
 * @param heightPx of everything
 */
public record ChainPlaces(boolean across, List<List<Place>> things, List<List<Place>> joints, double heightPx) {
    private static final double LEAST_THING_EM = 9.5;
    private static final double MOST_THING_EM = 15;
    private static final double LEAST_JOINT_EM = 8.5;
    private static final double THING_HEIGHT_EM = 7;
    private static final double ROW_GAP_EM = 1.4;
    private static final double MARGIN_EM = 0.6;
    private static final double DOWN_THING_EM = 26;
    private static final double DOWN_THING_HEIGHT_EM = 4.6;
    private static final double DOWN_JOINT_HEIGHT_EM = 4.6;

    /** A rectangle. */
    public record Place(double x, double y, double width, double height) {
        public boolean holds(double px, double py) {
            return px >= x && px <= x + width && py >= y && py <= y + height;
        }

        public double middleX() {
            return x + width / 2;
        }

        public double middleY() {
            return y + height / 2;
        }
    }

    /** @param thingsOfWays how many things each way has, the longest first */
    public static ChainPlaces of(List<Integer> thingsOfWays, double widthPx, double em) {
        int most = thingsOfWays.stream().mapToInt(Integer::intValue).max().orElse(0);
        double room = widthPx - 2 * MARGIN_EM * em;
        boolean across = most * LEAST_THING_EM * em + (most - 1) * LEAST_JOINT_EM * em <= room;
        return across ? across(thingsOfWays, most, room, em) : down(thingsOfWays, room, em);
    }

    private static ChainPlaces across(List<Integer> thingsOfWays, int most, double room, double em) {
        double thing = Math.min(MOST_THING_EM * em, LEAST_THING_EM * em + (room - most * LEAST_THING_EM * em - (most - 1) * LEAST_JOINT_EM * em) / (2 * most));
        double joint = most < 2 ? 0 : Math.min(thing * 1.1, (room - most * thing) / (most - 1));
        List<List<Place>> things = new ArrayList<>();
        List<List<Place>> joints = new ArrayList<>();
        double y = MARGIN_EM * em;
        for (int count : thingsOfWays) {
            List<Place> row = new ArrayList<>();
            List<Place> between = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                double x = MARGIN_EM * em + i * (thing + joint);
                row.add(new Place(x, y, thing, THING_HEIGHT_EM * em));
                if (i > 0) {
                    between.add(new Place(x - joint, y, joint, THING_HEIGHT_EM * em));
                }
            }
            things.add(row);
            joints.add(between);
            y += (THING_HEIGHT_EM + ROW_GAP_EM) * em;
        }
        return new ChainPlaces(true, things, joints, y - ROW_GAP_EM * em + MARGIN_EM * em);
    }

    private static ChainPlaces down(List<Integer> thingsOfWays, double room, double em) {
        double thing = Math.min(room, DOWN_THING_EM * em);
        List<List<Place>> things = new ArrayList<>();
        List<List<Place>> joints = new ArrayList<>();
        double y = MARGIN_EM * em;
        for (int count : thingsOfWays) {
            List<Place> row = new ArrayList<>();
            List<Place> between = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                if (i > 0) {
                    between.add(new Place(MARGIN_EM * em, y, thing, DOWN_JOINT_HEIGHT_EM * em));
                    y += DOWN_JOINT_HEIGHT_EM * em;
                }
                row.add(new Place(MARGIN_EM * em, y, thing, DOWN_THING_HEIGHT_EM * em));
                y += DOWN_THING_HEIGHT_EM * em;
            }
            things.add(row);
            joints.add(between);
            y += ROW_GAP_EM * em;
        }
        return new ChainPlaces(false, things, joints, y - ROW_GAP_EM * em + MARGIN_EM * em);
    }

    /** Where a dragged box is let go: its place among the boxes then. @param box its place now  @param boxes how many there are */
    public int dropped(int box, int boxes, double x, double y) {
        int before = (int) things.get(0).stream().filter(place -> across ? place.middleX() < x : place.middleY() < y).count();
        // The pickup counts as one; a box passed on its way to the right counts itself too.
        return Math.max(0, Math.min(boxes - 1, before - 1 - (before - 1 > box ? 1 : 0)));
    }

    /** The joint a box lands at when it goes to that place; empty when it stays. */
    public Optional<Place> landing(int box, int to) {
        return to == box ? Optional.empty() : Optional.of(joints.get(0).get(to < box ? to : to + 1));
    }
}
