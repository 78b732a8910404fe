package evenwood.report;

import evenwood.rig.Dial;
import evenwood.rig.Scale;
import evenwood.rig.Setting;
import java.util.List;
import java.util.OptionalDouble;

/** Controls drawn as they stand: knobs with a pointer, sliders with a cap, switches as words. */
final class SheetControls {
    private static final double CELL_WIDTH = 74;
    /** The sliders of a graphic equaliser stand side by side where their words let them. */
    private static final double LEAST_CELL_WIDTH = 44;
    private static final double LETTER_WIDTH = 5.5;
    private static final double CELL_HEIGHT = 84;
    private static final double KNOB_RADIUS = 19;
    private static final double SLIDER_LENGTH = 42;
    /** A knob turns over three quarters of a circle; common practice. */
    private static final double KNOB_DEGREES = 270;
    private static final int TICKS = 10;

    private final Drawing page;
    private final double cellWidth;

    private SheetControls(Drawing page, double cellWidth) {
        this.page = page;
        this.cellWidth = cellWidth;
    }

    /** @return where the next part of the page may begin */
    static double draw(Drawing page, List<Setting> settings, double left, double top, double width) {
        SheetControls controls = new SheetControls(page, cellWidth(settings, width));
        int columns = (int) (width / controls.cellWidth);
        for (int i = 0; i < settings.size(); i++) {
            controls.control(settings.get(i), left + (i % columns + 0.5) * controls.cellWidth, top + (i / columns) * CELL_HEIGHT);
        }
        return top + ((settings.size() + columns - 1) / columns) * CELL_HEIGHT;
    }

    private static double cellWidth(List<Setting> settings, double width) {
        double forWords = settings.stream().mapToDouble(setting -> LETTER_WIDTH * (1 + Math.max(setting.control().name().length(), words(setting).length())))
            .max().orElse(CELL_WIDTH);
        double sideBySide = Math.max(LEAST_CELL_WIDTH, width / Math.max(1, settings.size()));
        return Math.min(Math.max(CELL_WIDTH, forWords), Math.max(sideBySide, Math.min(width, forWords)));
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

    /** Where a filter or notch works is worth knowing too when its marking does not tell: an engineer's desk has other markings. */
    private static String words(Setting setting) {
        boolean unsaid = setting.control().frequency().map(dial -> dial.scale() != Scale.HZ).orElse(setting.control().gain().isEmpty());
        return setting.say() + (setting.on() && unsaid ? ", " + Scale.HZ.say(setting.frequencyHz()) : "");
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
