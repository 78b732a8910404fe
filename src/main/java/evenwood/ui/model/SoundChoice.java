package evenwood.ui.model;

import java.nio.file.Path;

/** What the player wants to be heard. */
public sealed interface SoundChoice {
    /** An input of this machine. @param channel counted from 1 */
    record Live(String inputName, int channel) implements SoundChoice { }

    /** The demo take as if it were played now. */
    record DemoPlayed() implements SoundChoice { }

    /** The demo take, checked as a whole at once. */
    record DemoChecked() implements SoundChoice { }

    /** A recording. @param channel counted from 1; 0 leaves the choice */
    record Recording(Path file, int channel) implements SoundChoice { }

    /** Whether it happens now, so that one can play along with what is asked. */
    default boolean isLive() {
        return this instanceof Live || this instanceof DemoPlayed;
    }
}
