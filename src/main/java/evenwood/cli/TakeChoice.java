package evenwood.cli;

import evenwood.journal.TakeFilter;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Which kept takes are meant. */
final class TakeChoice {
    @Option(names = "--search", paramLabel = "WORDS", description = "Takes with all these words in name, instrument, venue, note, tags or findings.")
    private String words = "";

    @Option(names = "--instrument", paramLabel = "NAME", description = "Takes of this instrument or rig.")
    private String instrument;

    @Option(names = "--tag", paramLabel = "TAG", description = "Takes with this tag.")
    private String tag;

    @Option(names = "--from", paramLabel = "DAY", description = "Takes from this day on, such as 2026-03-14.")
    private String from;

    @Option(names = "--to", paramLabel = "DAY", description = "Takes before this day.")
    private String to;

    TakeFilter filter() {
        TakeFilter filter = TakeFilter.search(words).between(instant(from), instant(to));
        filter = instrument == null ? filter : filter.ofInstrument(instrument);
        return tag == null ? filter : filter.tagged(tag.toLowerCase(java.util.Locale.ROOT));
    }

    List<String> searched() {
        return filter().words();
    }

    private static Optional<Instant> instant(String day) {
        return Optional.ofNullable(day).map(text -> JournalPlace.time("journal", text).toInstant());
    }
}
