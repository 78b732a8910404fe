package evenwood.rig;

import java.util.ArrayList;
import java.util.List;

/**
 * Something that can be set between two stops: a knob, a slider, a wheel.
 *
 * <p>What a position does is told by points of the control's law, straight between them: decibels over position for a gain,
 * and hertz over position for a frequency, where the line is straight in the logarithm. Without points the marking itself is
 * the value, as on a control printed in decibels or hertz.
 *
 * @param scale  how it is marked
 * @param least  position at the one stop
 * @param most   position at the other stop
 * @param step   the smallest move a hand can make on it
 * @param points position and value, positions rising from least to most; none when the marking is the value
 */
public record Dial(Scale scale, double least, double most, double step, List<Point> points) {
    /**
     * @param position on the control's own marking
     * @param value    decibels or hertz there
     */
    public record Point(double position, double value) { }

    public Dial {
        points = List.copyOf(points);
        if (!(least < most) || !(step > 0) || points.size() == 1) {
            throw new IllegalArgumentException("dial: least=" + least + ", most=" + most + ", step=" + step + ", points=" + points.size()
                + ", but least < most, a positive step and no or two points are needed");
        }
    }

    /** Decibels at a position; beyond a stop it is the stop. */
    public double db(double position) {
        return between(position, false);
    }

    /** Hertz at a position; beyond a stop it is the stop. */
    public double hz(double position) {
        return between(position, true);
    }

    /** The position that gives so many decibels, or the nearest stop. The law must be rising or falling throughout. */
    public double positionOfDb(double db) {
        return inverse(db, false);
    }

    public double positionOfHz(double hz) {
        return inverse(hz, true);
    }

    /** The nearest position a hand can set. */
    public double settable(double position) {
        double steps = Math.rint((position - least) / step);
        return Math.max(least, Math.min(most, least + steps * step));
    }

    /** All positions a hand can set, from least to most. */
    public List<Double> positions() {
        List<Double> all = new ArrayList<>();
        for (int i = 0; least + i * step <= most + step * 1e-6; i++) {
            all.add(Math.min(most, least + i * step));
        }
        return all;
    }

    private double between(double position, boolean logarithmic) {
        if (points.isEmpty()) {
            return Math.max(least, Math.min(most, position));
        }
        Point before = points.get(0);
        if (position <= before.position) {
            return before.value;
        }
        for (Point after : points.subList(1, points.size())) {
            if (position <= after.position) {
                double part = (position - before.position) / (after.position - before.position);
                return logarithmic ? before.value * Math.pow(after.value / before.value, part) : before.value + part * (after.value - before.value);
            }
            before = after;
        }
        return before.value;
    }

    private double inverse(double value, boolean logarithmic) {
        if (points.isEmpty()) {
            return Math.max(least, Math.min(most, value));
        }
        boolean rising = points.get(points.size() - 1).value >= points.get(0).value;
        Point before = points.get(0);
        if (rising ? value <= before.value : value >= before.value) {
            return before.position;
        }
        for (Point after : points.subList(1, points.size())) {
            if (rising ? value <= after.value : value >= after.value) {
                double part = logarithmic ? Math.log(value / before.value) / Math.log(after.value / before.value)
                    : (value - before.value) / (after.value - before.value);
                return before.position + part * (after.position - before.position);
            }
            before = after;
        }
        return before.position;
    }

    static Dial read(YamlFields fields, double least, double most, String unit) {
        double first = fields.number("least", -1000, 100_000, "the control's marking");
        double last = fields.number("most", -1000, 100_000, "the control's marking");
        if (first >= last) {
            throw fields.wrong("most", String.valueOf(last), "it must lie above least");
        }
        Dial dial = new Dial(fields.choice("scale", Scale.class), first, last,
            fields.number("step", 1e-3, last - first, "the control's marking"), points(fields, first, last, least, most, unit));
        fields.nothingElse();
        return dial;
    }

    private static List<Point> points(YamlFields fields, double first, double last, double least, double most, String unit) {
        if (!fields.has("points")) {
            return List.of();
        }
        List<Point> points = new ArrayList<>();
        for (YamlFields point : fields.parts("points")) {
            Point next = new Point(point.number("at", first, last, "the control's marking"), point.number("is", least, most, unit));
            if (!points.isEmpty() && next.position <= points.get(points.size() - 1).position) {
                throw point.wrong("at", String.valueOf(next.position), "positions must rise");
            }
            point.nothingElse();
            points.add(next);
        }
        if (points.size() < 2) {
            throw fields.wrong("points", points.size() + " point", "at least two are needed");
        }
        return points;
    }
}
