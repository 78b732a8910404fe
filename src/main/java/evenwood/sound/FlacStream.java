package evenwood.sound;

import java.io.IOException;

/**
 * What a FLAC file says of itself before its first frame; pictures, tags and other notes are stepped over.
 *
 * <p>Source: RFC 9639, 8.1 and 8.2.
 *
 * @param totalFrames 0 when the encoder did not know
 */
record FlacStream(int sampleRateHz, int channels, int bitsPerSample, long totalFrames) {
    private static final int DESCRIPTION_BYTES = 34;

    /** Reads from just behind the letters fLaC to the first frame. */
    static FlacStream read(FileBytes bytes) throws IOException {
        FlacStream stream = null;
        boolean last = false;
        while (!last) {
            int kind = bytes.u8();
            int size = bytes.u8() << 16 | bytes.u16BigEndian();
            last = (kind & 0x80) != 0;
            long next = bytes.position() + size;
            if (stream == null) {
                if ((kind & 0x7F) != 0 || size != DESCRIPTION_BYTES) {
                    throw new FileFault(SoundTrouble.FILE_BROKEN, "its FLAC header is broken (no stream description)", FileFault.EXPORT_AGAIN);
                }
                stream = description(bytes);
            }
            bytes.seek(next);
        }
        return stream;
    }

    /** Block and frame sizes, 10 bytes, are of no use here; then 20, 3, 5 and 36 bits. */
    private static FlacStream description(FileBytes bytes) throws IOException {
        bytes.seek(bytes.position() + 10);
        long packed = bytes.u32BigEndian() << 32 | bytes.u32BigEndian();
        return new FlacStream((int) (packed >>> 44), (int) (packed >>> 41 & 7) + 1, (int) (packed >>> 36 & 31) + 1,
            packed & 0xF_FFFF_FFFFL);
    }
}
