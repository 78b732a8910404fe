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

    private final String advice;

    FileFault(String whatIsWrong, String advice) {
        super(whatIsWrong);
        this.advice = advice;
    }

    FileFault(String whatIsWrong, String advice, Throwable cause) {
        super(whatIsWrong, cause);
        this.advice = advice;
    }

    /** The header is there, but not one frame. */
    static FileFault noSound() {
        return new FileFault("the file holds no sound (its header is there, but no samples)", EXPORT_AGAIN);
    }

    String advice() {
        return advice;
    }
}
