package evenwood.ui.model;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A control's position, as the rig says it, in the player's language: "−4 dB at 420 Hz", "off", "2 o’clock". */
public final class Positions {
    private static final Pattern DECIMAL = Pattern.compile("(\\d)\\.(\\d)");
    private static final Pattern AT = Pattern.compile("^(.*) at (.*)$");
    private static final Pattern CLOCK = Pattern.compile("^(.*) o’clock$");

    private Positions() { }

    public static String say(String marking, Words words) {
        if (marking.equals("on") || marking.equals("off")) {
            return words.say("position." + marking);
        }
        Matcher at = AT.matcher(marking);
        if (at.matches()) {
            return words.say("position.at", say(at.group(1), words), say(at.group(2), words));
        }
        Matcher clock = CLOCK.matcher(marking);
        if (clock.matches()) {
            return words.say("position.clock", clock.group(1));
        }
        return DECIMAL.matcher(marking).replaceAll("$1" + words.say("position.decimal") + "$2");
    }
}
