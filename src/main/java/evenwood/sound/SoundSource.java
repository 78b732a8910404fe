package evenwood.sound;

import java.util.OptionalLong;

/**
 * Where samples come from: a file, a live input or the demo performer.
 *
 * <p>Thread: one reader. A live source's {@link #close} may be called from any thread and releases a waiting reader.
 */
public interface SoundSource extends AutoCloseable {
    /** What the blocks will carry; fixed for the life of the source. */
    SoundFormat format();

    /** Length of the whole take in frames, when it can be known beforehand. */
    OptionalLong lengthFrames();

    /** A short name for people: the file's path, the input's name, or the demo's title. */
    String name();

    /**
     * Fills the block from its start and sets its frames and start frame. Blocks until there is something.
     *
     * @return frames delivered, 1 to the block's capacity, or −1 when the take is over
     * @throws SoundProblem if the source fails midway; what was delivered before stays valid
     */
    int read(AudioBlock block);

    @Override
    void close();
}
