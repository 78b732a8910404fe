package evenwood.journal;

import java.time.OffsetDateTime;

/**
 * Something that happened to a rig.
 *
 * @param uid        the same in every copy of the journal
 * @param at         when
 * @param kind       what
 * @param instrument whose, an id or a rig's name; empty for everything the player has
 * @param note       the player's own words
 */
public record Event(String uid, OffsetDateTime at, EventKind kind, String instrument, String note) {
    /** Whether it concerns a take: one of the same instrument or rig, or anybody's when it names none. */
    public boolean concerns(TakeLine take) {
        return instrument.isEmpty() || instrument.equalsIgnoreCase(take.instrument()) || instrument.equalsIgnoreCase(take.rigName());
    }
}
