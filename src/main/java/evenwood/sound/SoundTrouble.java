package evenwood.sound;

import java.util.Locale;

/** What is the matter with a file or a device, for whoever says it in the player's language. The first value is always its name. */
public enum SoundTrouble {
    FILE_MISSING, FILE_FOLDER, FILE_NOT_PLAIN, FILE_FORBIDDEN, FILE_UNREADABLE, FILE_EMPTY, FILE_NO_SOUND, FILE_CUT_SHORT, FILE_BROKEN, FILE_FOREIGN,
    FILE_CODING, FILE_SHAPE, FILE_CHANNEL,
    INPUT_NONE, INPUT_AWAY, INPUT_UNCLEAR, INPUT_REFUSED, INPUT_CHANNEL, INPUT_CHANGED, INPUT_FORMAT, INPUT_SILENT,
    OUTPUT_NONE, OUTPUT_AWAY, OUTPUT_REFUSED, OUTPUT_STUCK,
    WRITE_FOLDER, WRITE_REFUSED, WRITE_FAILED,
    NOISE_SHORT, BROKEN_OFF,
    /** Only its English line tells. */
    OTHER;

    /** Such as {@code input-away}: the key of its sentence. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
