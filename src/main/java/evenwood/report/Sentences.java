package evenwood.report;

import evenwood.judge.Statement;
import java.text.MessageFormat;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;

/**
 * Says a {@link Statement} in a language a player reads.
 *
 * <p>The sentences stand in {@code sentences*.properties}; numbers are written in the language's own way. Minus signs are
 * real ones (U+2212): a terminal that cannot show them gets a hyphen from whoever prints.
 */
public final class Sentences {
    private static final String BUNDLE = "evenwood.report.sentences";

    private final ResourceBundle bundle;
    private final Locale locale;

    private Sentences(Locale locale) {
        this.locale = locale;
        bundle = ResourceBundle.getBundle(BUNDLE, locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    }

    /** English where the language has no sentences of its own. */
    public static Sentences in(Locale locale) {
        return new Sentences(locale);
    }

    /** The player's language, or English where we have not got it, with numbers written that language's way. */
    public static Sentences nearestTo(Locale wanted) {
        return wanted.getLanguage().equals(Locale.GERMAN.getLanguage()) ? in(Locale.GERMAN) : english();
    }

    public static Sentences english() {
        return in(Locale.ROOT);
    }

    public Locale locale() {
        return locale;
    }

    /** Decibels with one decimal in the language's own way, or a dash where nothing was measured. */
    public String level(double db) {
        return Double.isFinite(db) ? number(db, 1) : "–";
    }

    /** A number in the language's own way, never "−0". */
    public String number(double value, int decimals) {
        return String.format(numbers(), "%." + decimals + "f", value).replace('-', '−').replaceAll("^−(0(?:[.,]0+)?)$", "$1");
    }

    private Locale numbers() {
        return locale.equals(Locale.ROOT) ? Locale.ENGLISH : locale;
    }

    public String say(Statement statement) {
        return say(statement.key(), statement.figures().toArray());
    }

    /**
     * @throws MissingResourceException if no sentence has this key, which is a mistake of ours
     */
    public String say(String key, Object... figures) {
        return signs(new MessageFormat(bundle.getString(key), numbers()).format(figures));
    }

    /** A real minus, and none at all before nothing: "0.0", never "−0.0" or "+0.0". */
    private static String signs(String text) {
        return text.replaceAll("(?<![\\w.])[-+](?=0[.,]0+(?![\\d]))", "").replaceAll("(?<![\\w.])-(?=\\d)", "−");
    }
}
