package evenwood.report;

import evenwood.rig.Dial;
import evenwood.rig.Scale;
import evenwood.rig.Setting;
import java.util.List;
import java.util.OptionalDouble;

/** Controls drawn as they stand: knobs with a pointer, sliders with a cap, switches as words. */
final class SheetControls {
    private static final double CELL_WIDTH = 74;
    private static final double CELL_HEIGHT = 84;
    private static final double KNOB_RADIUS = 19;
    private static final double SLIDER_LENGTH = 42;
    /** A knob turns over three quarters of a circle; common practice. */
    private static final double KNOB_DEGREES = 270;
    private static final int TICKS = 10;

    private final Drawing page;

    private SheetControls(Drawing page) {
        this.page = page;
    }

    /** @return where the next part of the page may begin */
    static double draw(Drawing page, List<Setting> settings, double left, double top, double width) {
        SheetControls controls = new SheetControls(page);
        int columns = (int) (width / CELL_WIDTH);
        for (int i = 0; i < settings.size(); i++) {
            controls.control(settings.get(i), left + (i % columns + 0.5) * CELL_WIDTH, top + (i / columns) * CELL_HEIGHT);
        }
        return top + ((settings.size() + columns - 1) / columns) * CELL_HEIGHT;
    }

    private void control(Setting setting, double centre, double top) {
        String colour = setting.on() ? Drawing.BLACK : Drawing.GREY;
        page.words(centre, top + 9, 9, Drawing.Anchor.MIDDLE, setting.control().name(), colour);
        double middle = top + 16 + KNOB_RADIUS + 4;
        if (setting.control().gain().isPresent()) {
            Dial dial = setting.control().gain().get();
            if (dial.scale() == Scale.NUMBERS || dial.scale() == Scale.CLOCK) {
                knob(dial, setting.gain(), centre, middle, colour);
            } else {
                slider(dial, setting.gain(), centre, middle, colour);
            }
        } else if (setting.control().frequency().isPresent()) {
            knob(setting.control().frequency().get(), setting.frequency(), centre, middle, colour);
        } else {
            page.box(centre - 12, middle - 7, 24, 14, setting.on() ? Drawing.BLUE : "#ffffff", Drawing.BLACK);
        }
        page.words(centre, top + 77, 10, Drawing.Anchor.MIDDLE, words(setting), setting.on() ? Drawing.BLUE : Drawing.GREY);
    }

    /** A switched filter's fixed frequency is worth knowing too. */
    private static String words(Setting setting) {
        boolean fixed = setting.on() && setting.control().gain().isEmpty() && setting.control().frequency().isEmpty();
        return setting.say() + (fixed ? ", " + Scale.HZ.say(setting.frequencyHz()) : "");
    }

    private void knob(Dial dial, OptionalDouble position, double x, double y, String colour) {
        for (int tick = 0; tick <= TICKS; tick++) {
            double[] direction = direction(tick / (double) TICKS);
            page.line(x + (KNOB_RADIUS + 2) * direction[0], y + (KNOB_RADIUS + 2) * direction[1], x + (KNOB_RADIUS + 5) * direction[0],
                y + (KNOB_RADIUS + 5) * direction[1], 0.7, Drawing.GREY);
        }
        page.circle(x, y, KNOB_RADIUS, "#f4f4f0", colour);
        double part = (position.orElse(dial.least()) - dial.least()) / (dial.most() - dial.least());
        double[] direction = direction(part);
        page.line(x + 5 * direction[0], y + 5 * direction[1], x + KNOB_RADIUS * direction[0], y + KNOB_RADIUS * direction[1], 3, colour);
    }

    /** From seven o'clock over the top to five o'clock. */
    private static double[] direction(double part) {
        double radians = Math.toRadians(90 + (360 - KNOB_DEGREES) / 2 + part * KNOB_DEGREES);
        return new double[] {Math.cos(radians), Math.sin(radians)};
    }

    private void slider(Dial dial, OptionalDouble position, double x, double y, String colour) {
        double part = (position.orElse(dial.least()) - dial.least()) / (dial.most() - dial.least());
        double zero = dial.least() < 0 && dial.most() > 0 ? -dial.least() / (dial.most() - dial.least()) : 0;
        double bottom = y + SLIDER_LENGTH / 2;
        page.line(x, bottom, x, bottom - SLIDER_LENGTH, 2, Drawing.PALE);
        page.line(x - 9, bottom - zero * SLIDER_LENGTH, x + 9, bottom - zero * SLIDER_LENGTH, 0.7, Drawing.GREY);
        page.box(x - 7, bottom - part * SLIDER_LENGTH - 3.5, 14, 7, "#f4f4f0", colour);
        page.line(x - 7, bottom - part * SLIDER_LENGTH, x + 7, bottom - part * SLIDER_LENGTH, 1.5, colour);
    }
}
