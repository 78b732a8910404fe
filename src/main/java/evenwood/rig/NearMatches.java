package evenwood.rig;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;

/** Finds what a mistyped word may have meant. */
public final class NearMatches {
    private static final int MOST = 3;

    private NearMatches() { }

    /** Up to three known words, nearest first, that share most letters in order with the given one. */
    public static List<String> of(String wrong, Collection<String> known) {
        int reach = Math.max(2, wrong.length() / 3);
        return known.stream()
            .filter(word -> distance(wrong, word) <= reach || word.contains(wrong) || wrong.contains(word))
            .sorted(Comparator.comparingInt((String word) -> distance(wrong, word)).thenComparing(Comparator.naturalOrder()))
            .limit(MOST).toList();
    }

    /** {@code "; did you mean a, b?"}, or nothing when nothing is near. */
    static String hint(String wrong, Collection<String> known) {
        List<String> near = of(wrong, known);
        return near.isEmpty() ? "" : "; did you mean " + String.join(", ", near) + "?";
    }

    /** Levenshtein's edit distance: insertions, deletions and changes of one letter. */
    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int above = row[j];
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(change, Math.min(above, row[j - 1]) + 1);
                diagonal = above;
            }
        }
        return row[b.length()];
    }
}
