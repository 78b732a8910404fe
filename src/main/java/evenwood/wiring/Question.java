package evenwood.wiring;

import java.util.List;

/**
 * One thing to ask a player.
 *
 * @param key     of the sentence, such as {@code ask.pickup}
 * @param figures for the sentence
 * @param kind    what sort of answer
 * @param options to choose from, for a choice
 */
public record Question(String key, List<Object> figures, Kind kind, List<Option> options) {
    /** What sort of answer a question wants. */
    public enum Kind {
        /** One option, by its number or id. */
        ONE,
        /** Any number of options, parted by commas; empty for none. */
        MANY,
        /** A number not under 0. */
        NUMBER,
        /** A number, or empty for "not known". */
        NUMBER_IF_KNOWN,
        /** Yes or no. */
        YES_NO,
        /** Yes, no, or empty for "not known". */
        YES_NO_IF_KNOWN,
        /** Free words, not empty. */
        TEXT
    }

    /** One answer to choose: its id, and its name for people. */
    public record Option(String id, String name) { }

    public Question {
        figures = List.copyOf(figures);
        options = List.copyOf(options);
    }

    /** Whether this answer can be understood. */
    public boolean accepts(String answer) {
        String text = answer.trim();
        return switch (kind) {
            case ONE -> !chosen(text).isEmpty();
            case MANY -> text.isEmpty() || List.of(text.split(",")).stream().noneMatch(part -> chosen(part.trim()).isEmpty());
            case NUMBER -> number(text) >= 0;
            case NUMBER_IF_KNOWN -> text.isEmpty() || !Double.isNaN(number(text));
            case YES_NO -> yes(text) || no(text);
            case YES_NO_IF_KNOWN -> text.isEmpty() || yes(text) || no(text);
            case TEXT -> !text.isEmpty();
        };
    }

    /** The id chosen by its number or itself; empty when there is none. */
    String chosen(String answer) {
        String text = answer.trim();
        for (int i = 0; i < options.size(); i++) {
            if (text.equals(String.valueOf(i + 1)) || text.equalsIgnoreCase(options.get(i).id)) {
                return options.get(i).id;
            }
        }
        return "";
    }

    /** NaN stands for "no number" inside this class and its package only. */
    static double number(String text) {
        try {
            double number = Double.parseDouble(text.trim().replace(',', '.'));
            return Double.isInfinite(number) ? Double.NaN : number;
        } catch (NumberFormatException noNumber) {
            return Double.NaN;
        }
    }

    static boolean yes(String text) {
        return text.trim().matches("(?i)y|yes");
    }

    private static boolean no(String text) {
        return text.matches("(?i)n|no");
    }
}
