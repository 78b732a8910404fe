package evenwood.journal;

import java.util.List;
import java.util.Locale;

/**
 * What the player says about a take.
 *
 * @param instrument its id, or the player's own word; empty when nobody said
 * @param venue      where it was played
 * @param note       anything
 * @param tags       single words to find it by, in small letters
 */
public record TakeWords(String instrument, String venue, String note, List<String> tags) {
    public static final TakeWords NONE = new TakeWords("", "", "", List.of());

    public TakeWords {
        instrument = instrument.strip();
        venue = venue.strip();
        note = note.strip();
        tags = tags.stream().map(tag -> tag.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", "-")).filter(tag -> !tag.isEmpty()).distinct().toList();
    }
}
