package evenwood.ui.model;

import evenwood.rig.Dial;
import evenwood.rig.Scale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A dial's position as text, and a typed text as a position: "6½", "6.5", "−4 dB", "2.5 kHz", "2 o’clock". */
public final class DialText {
    private static final Pattern TYPED = Pattern.compile("\\s*([+−-]?)\\s*(\\d*)(?:[.,](\\d+))?\\s*([¼½¾]?)\\s*([kK]?)[^\\d]*");
    private static final double AFTERNOON = 7;

    private DialText() { }

    public static String say(double position, Dial dial, Words words) {
        return Positions.say(dial.scale().say(position), words);
    }

    /** Empty when it is no number; a number beyond a stop is the stop. */
    public static OptionalDouble position(String text, Dial dial) {
        Matcher typed = TYPED.matcher(text);
        if (!typed.matches() || typed.group(2).isEmpty() && typed.group(3) == null && typed.group(4).isEmpty()) {
            return OptionalDouble.empty();
        }
        double value = Double.parseDouble((typed.group(2).isEmpty() ? "0" : typed.group(2)) + "." + (typed.group(3) == null ? "0" : typed.group(3)));
        value += switch (typed.group(4)) {
            case "¼" -> 0.25;
            case "½" -> 0.5;
            case "¾" -> 0.75;
            default -> 0;
        };
        value *= typed.group(1).isEmpty() || typed.group(1).equals("+") ? 1 : -1;
        value *= typed.group(5).isEmpty() ? 1 : 1000;
        if (dial.scale() == Scale.CLOCK && value < AFTERNOON) {
            value += 12;
        }
        return OptionalDouble.of(Math.max(dial.least(), Math.min(dial.most(), value)));
    }
}
