package evenwood.sound;

import java.io.IOException;

/** A file format's own part of reading: bytes in, frames with all channels side by side out, in order, once. */
interface FrameDecoder {
    FrameShape shape();

    /**
     * Writes frames into the array from the given index on.
     *
     * @return frames written, 1 to {@code mostFrames}, or −1 when the take is over
     * @throws IOException if the file cannot be read on; a {@link FileFault} says why in the player's words
     */
    int decode(float[] interleaved, int offset, int mostFrames) throws IOException;
}
