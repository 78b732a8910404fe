package evenwood.ui.model;

import evenwood.judge.Fault;
import evenwood.judge.Severity;
import evenwood.judge.Statement;
import evenwood.report.LearnText;
import evenwood.report.Sentences;
import evenwood.rig.LearnedControl;
import java.text.MessageFormat;
import java.text.NumberFormat;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;

/** Everything the window says, in one language, with numbers written that language's way and a unit at each. */
public final class Words {
    /** The languages there are; the first is the one for everybody else. */
    public static final List<Locale> LANGUAGES = List.of(Locale.ENGLISH, Locale.GERMAN);
    private static final String BUNDLE = "evenwood.ui.words";
    /** Under this nothing was heard: far under any converter's noise. */
    private static final double SILENCE_DB = -150;

    private final Locale locale;
    private final ResourceBundle bundle;
    private final Sentences sentences;

    private Words(Locale locale) {
        this.locale = locale;
        bundle = ResourceBundle.getBundle(BUNDLE, locale, ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
        sentences = locale.equals(Locale.ENGLISH) ? Sentences.english() : Sentences.in(locale);
    }

    /** The nearest language there is. */
    public static Words in(Locale wanted) {
        return new Words(LANGUAGES.stream().filter(each -> each.getLanguage().equals(wanted.getLanguage())).findFirst().orElse(LANGUAGES.get(0)));
    }

    public Locale locale() {
        return locale;
    }

    /** @param figures numbers, words, and {@link Problem}s, which are said in their place */
    public String say(String key, Object... figures) {
        String pattern = bundle.getString(key);
        Object[] said = Arrays.stream(figures).map(figure -> figure instanceof Problem problem ? say(problem) : figure).toArray();
        return minus(new MessageFormat(pattern, locale).format(said));
    }

    public boolean has(String key) {
        return bundle.containsKey(key);
    }

    /** The word for it, or what it is called where the language has none. */
    public String sayOr(String key, String otherwise) {
        return has(key) ? say(key) : otherwise;
    }

    public String say(Statement statement) {
        return sentences.say(statement);
    }

    /** What was learned of a control, a sentence for each position. @param lowestHz where the instrument begins */
    public List<String> learned(LearnedControl learned, double lowestHz) {
        return LearnText.lines(learned, lowestHz, sentences, setting -> Positions.say(setting.say(), this)).stream().map(String::strip).toList();
    }

    /** A sentence or two, with what to do. */
    public String say(Problem problem) {
        boolean ofInput = problem.key().startsWith("problem.input-");
        Object[] values = problem.values().stream().map(value -> ofInput && value instanceof String name ? input(name) : value).toArray();
        String sentence = say(problem.key(), values);
        return problem.keptSeconds().isPresent() ? say("problem.kept", sentence, problem.keptSeconds().getAsDouble()) : sentence;
    }

    public String fault(Fault fault) {
        return say("fault." + fault.id());
    }

    public String severity(Severity severity) {
        return say("severity." + severity.id());
    }

    /** An input's name; the system's own word for its usual one is no name for people. */
    public String input(String name) {
        return name.isEmpty() || name.startsWith("default") ? say("source.default-input") : name;
    }

    /** How sure something is, in words. */
    public String sure(double probability) {
        return say(probability >= 0.95 ? "sure.sure" : probability >= 0.75 ? "sure.fairly" : "sure.not");
    }

    /** "−12.3 dBTP", or a dash for silence. */
    public String level(double db, String unitKey) {
        return db > SILENCE_DB && Double.isFinite(db) ? say("number.with-unit", number(db, 1), say(unitKey)) : say("number.none");
    }

    /** "+3 dB", with its sign. */
    public String change(double db) {
        String sign = db > 0 ? "+" : "";
        return say("number.with-unit", sign + number(db, db == Math.rint(db) ? 0 : 1), say("unit.db"));
    }

    /** "420 Hz", "2.5 kHz". */
    public String frequency(double hz) {
        return hz < 1000 ? say("number.with-unit", number(hz, 0), say("unit.hz"))
            : say("number.with-unit", shortNumber(hz / 1000, 2), say("unit.khz"));
    }

    public String number(double value, int decimals) {
        NumberFormat format = NumberFormat.getNumberInstance(locale);
        format.setMinimumFractionDigits(decimals);
        format.setMaximumFractionDigits(decimals);
        return minus(format.format(value == 0 ? 0.0 : value));
    }

    /** Without zeros at the end. */
    public String shortNumber(double value, int mostDecimals) {
        NumberFormat format = NumberFormat.getNumberInstance(locale);
        format.setMaximumFractionDigits(mostDecimals);
        return minus(format.format(value));
    }

    /** "2:05". */
    public String clock(double seconds) {
        long whole = (long) seconds;
        return String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }

    private static String minus(String text) {
        return text.replaceAll("(?<![\\w.])-(?=\\d)", "−");
    }
}
