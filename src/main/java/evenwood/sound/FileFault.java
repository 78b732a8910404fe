package evenwood.sound;

import java.io.IOException;

/**
 * What is wrong with a file's content, as half a sentence without the file's name ("the file holds no sound"), and what
 * to do next. Whoever knows the name and the place in the take makes a {@link SoundProblem} of it.
 */
final class FileFault extends IOException {
    private static final long serialVersionUID = 1L;
    static final String EXPORT_AGAIN = "record or export it again";
    static final String CONVERT = "convert it to WAV or FLAC";

    private final SoundTrouble trouble;
    private final String advice;

    FileFault(SoundTrouble trouble, String whatIsWrong, String advice) {
        this(trouble, whatIsWrong, advice, null);
    }

    FileFault(SoundTrouble trouble, String whatIsWrong, String advice, Throwable cause) {
        super(whatIsWrong, cause);
        this.trouble = trouble;
        this.advice = advice;
    }

    /** The header is there, but not one frame. */
    static FileFault noSound() {
        return new FileFault(SoundTrouble.FILE_NO_SOUND, "the file holds no sound (its header is there, but no samples)", EXPORT_AGAIN);
    }

    SoundTrouble trouble() {
        return trouble;
    }

    String advice() {
        return advice;
    }
}
