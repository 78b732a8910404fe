package evenwood.coach.hunt;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Recognises the wish to lift a mains earth, in English or German; it is never a trial and never a cure.
 *
 * <p>The ground lift of a DI parts pin 1 of an audio cable and leaves every mains earth where it is: that is allowed.
 */
public final class EarthRefusal {
    private static final Pattern LIFTING = Pattern.compile("lift|cut|tap(e|ing)|remov|break|pull|bend|snap|off|without|no |bypass|disconnect|unplug|isolat|float|defeat");
    private static final Pattern EARTH = Pattern.compile("earth|third (pin|prong)|ground(ing)? (pin|prong|plug)|mains ground|safety ground|cheater|two.?prong");
    private static final Pattern OUTRIGHT = Pattern.compile("cheater|ground lift (plug|adapt)|(two|2).?prong");
    private static final Pattern GERMAN_LIFTING = Pattern.compile("trenn|kapp|kleb|zieh|entfern|klemm|lös|ohne|weg|schneid|knips|unterbrech|heb|auslass|umgeh|bieg|lift");
    private static final Pattern GERMAN_EARTH = Pattern.compile("(?<![wf])erde|erdung|schutzleiter|schutzkontakt");

    private EarthRefusal() { }

    public static boolean isMeant(String words) {
        String text = words.toLowerCase(Locale.ROOT);
        return OUTRIGHT.matcher(text).find() || EARTH.matcher(text).find() && LIFTING.matcher(text).find()
            || GERMAN_EARTH.matcher(text).find() && GERMAN_LIFTING.matcher(text).find();
    }
}
