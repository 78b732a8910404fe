package evenwood.journal;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Which takes are wanted; everything that is said must hold.
 *
 * @param words      each must stand somewhere in name, instrument, rig, venue, note, tags or findings
 * @param instrument id or rig's name
 * @param tag        one of the take's tags
 * @param from       not older
 * @param to         older than this
 * @param most       so many at most, the newest
 */
public record TakeFilter(List<String> words, Optional<String> instrument, Optional<String> tag, Optional<Instant> from, Optional<Instant> to, int most) {
    public static final TakeFilter ALL = new TakeFilter(List.of(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Integer.MAX_VALUE);

    public TakeFilter {
        words = List.copyOf(words);
    }

    /** Every word of a search field, in any order. */
    public static TakeFilter search(String text) {
        return new TakeFilter(List.of(text.strip().split("\\s+")).stream().filter(word -> !word.isEmpty()).toList(), Optional.empty(),
            Optional.empty(), Optional.empty(), Optional.empty(), Integer.MAX_VALUE);
    }

    public TakeFilter ofInstrument(String name) {
        return new TakeFilter(words, Optional.of(name), tag, from, to, most);
    }

    public TakeFilter tagged(String name) {
        return new TakeFilter(words, instrument, Optional.of(name), from, to, most);
    }

    public TakeFilter between(Optional<Instant> earliest, Optional<Instant> latest) {
        return new TakeFilter(words, instrument, tag, earliest, latest, most);
    }

    public TakeFilter atMost(int count) {
        return new TakeFilter(words, instrument, tag, from, to, count);
    }
}
