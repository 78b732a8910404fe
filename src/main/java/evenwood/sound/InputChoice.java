package evenwood.sound;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Which input the player meant: by its exact name, or by any part of it that only one input has.
 *
 * <p>How: exact first, then exact but for upper and lower case, then part of the name, then part of the description.
 */
final class InputChoice {
    private static final String WHAT_TO_DO = "choose one of: ";

    private InputChoice() { }

    /** The input meant; the first when nothing was wanted. */
    static LiveInput of(List<LiveInput> inputs, String wanted) {
        if (inputs.isEmpty()) {
            throw SoundProblem.atStart("listen: no input was found on this machine; plug in an interface or microphone, "
                + "and check that this program may use it (privacy settings)").of(SoundTrouble.INPUT_NONE);
        }
        if (wanted == null || wanted.isBlank()) {
            return inputs.get(0);
        }
        for (LiveInput input : inputs) {
            if (input.name().equals(wanted)) {
                return input;
            }
        }
        String part = wanted.strip().toLowerCase(Locale.ROOT);
        List<LiveInput> sameWord = inputs.stream().filter(i -> lower(i.name()).equals(part)).toList();
        List<LiveInput> partOfName = inputs.stream().filter(i -> lower(i.name()).contains(part)).toList();
        List<LiveInput> partOfWords = inputs.stream().filter(i -> lower(i.description()).contains(part)).toList();
        return only(wanted, inputs, List.of(sameWord, partOfName, partOfWords));
    }

    private static LiveInput only(String wanted, List<LiveInput> inputs, List<List<LiveInput>> matchesBestFirst) {
        for (List<LiveInput> matches : matchesBestFirst) {
            if (matches.size() == 1) {
                return matches.get(0);
            }
            if (matches.size() > 1) {
                throw SoundProblem.atStart("listen: input \"" + wanted + "\" could be any of " + matches.size()
                    + "; " + WHAT_TO_DO + names(matches)).of(SoundTrouble.INPUT_UNCLEAR, wanted);
            }
        }
        throw SoundProblem.atStart("listen: there is no input \"" + wanted + "\"; " + WHAT_TO_DO + names(nearestFirst(wanted, inputs))).of(SoundTrouble.INPUT_AWAY, wanted);
    }

    /** All inputs, those that share most with the wrong word first. */
    private static List<LiveInput> nearestFirst(String wanted, List<LiveInput> inputs) {
        return inputs.stream()
            .sorted((a, b) -> Double.compare(likeness(wanted, b.name()), likeness(wanted, a.name())))
            .toList();
    }

    /** Share of the letter pairs of one word that the other has too (Dice 1945), 0 to 1. */
    static double likeness(String one, String other) {
        List<String> a = pairs(lower(one));
        List<String> b = pairs(lower(other));
        long both = a.stream().filter(b::contains).count();
        return a.isEmpty() || b.isEmpty() ? 0 : 2.0 * both / (a.size() + b.size());
    }

    private static List<String> pairs(String word) {
        return java.util.stream.IntStream.range(0, Math.max(0, word.length() - 1))
            .mapToObj(i -> word.substring(i, i + 2)).distinct().toList();
    }

    private static String names(List<LiveInput> inputs) {
        return inputs.stream().map(i -> "\"" + i.name() + "\"").collect(Collectors.joining(", "));
    }

    private static String lower(String text) {
        return text.toLowerCase(Locale.ROOT);
    }
}
