package evenwood.journal;

import java.util.Locale;

/** What is the matter with the journal, for whoever says it in the player's language. The first value is always a file's or a take's name. */
public enum JournalTrouble {
    FULL, IN_USE, UNUSABLE, NOT_WRITABLE, DAMAGED, NO_TAKE, ENTRY_DAMAGED, FOREIGN, NEWER, NOT_THERE, NOT_WHOLE, UNWRITTEN,
    /** Only its line tells. */
    OTHER;

    /** Such as {@code not-writable}: part of the key of its sentence. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
