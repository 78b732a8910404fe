package evenwood.journal;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What can happen to a rig between takes that may change its sound. */
public enum EventKind {
    NEW_STRINGS, NEW_BATTERY, PICKUP_MOVED, NEW_PICKUP, NEW_CABLE, REPAIR, OTHER;

    /** As the player types it: {@code new-strings}. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<EventKind> ofId(String id) {
        return Arrays.stream(values()).filter(kind -> kind.id().equals(id)).findFirst();
    }
}
