package evenwood.rig;

import java.util.Locale;

/** How a control is marked, and how a position on it is said. */
public enum Scale {
    /** Figures, usually 0 to 10; read to a quarter. */
    NUMBERS {
        @Override
        public String say(double position) {
            long quarters = Math.round(position * 4);
            String whole = Long.toString(quarters / 4);
            String part = switch ((int) (quarters % 4)) {
                case 1 -> "¼";
                case 2 -> "½";
                case 3 -> "¾";
                default -> "";
            };
            return whole.equals("0") && !part.isEmpty() ? part : whole + part;
        }
    },
    /** As a pointer on a clock's face: 7 is fully left, 12 upright, 17 (five o'clock) fully right. */
    CLOCK {
        @Override
        public String say(double position) {
            double hour = position > 12.75 ? position - 12 : position;
            return NUMBERS.say(hour) + " o’clock";
        }
    },
    /** Decibels printed on the control. */
    DB {
        @Override
        public String say(double position) {
            return (position > 0 ? "+" : position < 0 ? "−" : "") + plain(Math.abs(position)) + " dB";
        }
    },
    /** Hertz printed on the control. */
    HZ {
        @Override
        public String say(double position) {
            return position >= 1000 ? plain(Math.round(position / 10) / 100.0) + " kHz" : plain(Math.rint(position)) + " Hz";
        }
    };

    public abstract String say(double position);

    private static String plain(double number) {
        double rounded = Math.rint(number * 100) / 100;
        return rounded == Math.rint(rounded) ? String.format(Locale.ROOT, "%.0f", rounded) : String.format(Locale.ROOT, "%s", rounded);
    }
}
