package evenwood.sound;

import java.io.IOException;

/**
 * Finds the samples of a WAV file: RIFF, RF64 and BW64, whole, streamed or cut short.
 *
 * <p>How: walks the chunks. Source: reference §15 (RIFF as widely implemented; EBU Tech 3306 for RF64, ITU-R BS.2088 for
 * BW64). Tolerated: unknown chunks, a missing pad byte, a {@code data} size of 0 or 0xFFFFFFFF (runs to the end of the
 * file) or beyond the end, bytes behind the RIFF size, {@code data} before {@code fmt}.
 * <p>Our own because the Java platform's reader knows no RF64 and takes a streamed or cut file at its header's word
 * (docs/dependencies.md).
 */
final class WavHeader {
    private static final long UNKNOWN_SIZE = 0xFFFF_FFFFL;
    /** A real file has a few dozen; a broken one can claim a chunk every eight bytes. */
    private static final int MOST_CHUNKS = 10_000;
    private static final int SMALLEST_FMT_BYTES = 16;
    private static final int DS64_BYTES = 28;

    private final FileBytes bytes;
    private WavSampleFormat format;
    private long longDataBytes = PcmStretch.TO_THE_END;
    private long dataStart = -1;
    private long dataBytes;

    private WavHeader(FileBytes bytes) {
        this.bytes = bytes;
    }

    /** Reads from just behind the word WAVE. */
    static PcmStretch read(FileBytes bytes) throws IOException {
        WavHeader header = new WavHeader(bytes);
        header.walk();
        if (header.format == null) {
            throw new FileFault(SoundTrouble.FILE_BROKEN, "its WAV header is broken (no format chunk)", FileFault.EXPORT_AGAIN);
        }
        if (header.dataStart < 0) {
            throw FileFault.noSound();
        }
        return header.format.stretch(header.dataStart, header.dataBytes);
    }

    private void walk() throws IOException {
        for (int chunk = 0; chunk < MOST_CHUNKS && bytes.remaining() >= 8; chunk++) {
            String name = bytes.fourLetters();
            long size = bytes.u32LittleEndian();
            long start = bytes.position();
            switch (name) {
                case "fmt " -> format = format(size);
                case "ds64" -> longSizes(size);
                case "data" -> data(start, size);
                default -> { }
            }
            if (format != null && dataStart >= 0 || name.equals("data") && dataBytes == PcmStretch.TO_THE_END) {
                return;
            }
            bytes.seek(start + size);
            skipPadByte(size);
        }
    }

    private WavSampleFormat format(long size) throws IOException {
        if (size < SMALLEST_FMT_BYTES || size > bytes.remaining()) {
            throw new FileFault(SoundTrouble.FILE_BROKEN, "its WAV header is broken (a format chunk of " + size + " bytes)", FileFault.EXPORT_AGAIN);
        }
        return WavSampleFormat.read(bytes, size);
    }

    private void longSizes(long size) throws IOException {
        if (size >= DS64_BYTES && bytes.remaining() >= DS64_BYTES) {
            bytes.i64LittleEndian();
            longDataBytes = bytes.i64LittleEndian();
        }
    }

    private void data(long start, long size) throws IOException {
        dataStart = start;
        dataBytes = size;
        if (size == UNKNOWN_SIZE) {
            dataBytes = longDataBytes > 0 ? longDataBytes : PcmStretch.TO_THE_END;
        } else if (size == 0 && !onlyChunksFollow()) {
            dataBytes = PcmStretch.TO_THE_END;
        }
    }

    /** Tells an empty take with, say, its tags behind it from one whose size was never filled in. */
    private boolean onlyChunksFollow() throws IOException {
        long start = bytes.position();
        boolean only = true;
        for (int chunk = 0; only && bytes.remaining() > 0; chunk++) {
            only = chunk < MOST_CHUNKS && bytes.remaining() >= 8 && isChunkName(bytes.peek(4));
            if (only) {
                bytes.seek(bytes.position() + 4);
                long size = bytes.u32LittleEndian();
                only = size <= bytes.remaining();
                bytes.seek(bytes.position() + size + (size & 1));
            }
        }
        bytes.seek(start);
        return only;
    }

    /** An odd chunk is followed by a pad byte, which some writers forget. */
    private void skipPadByte(long size) throws IOException {
        if ((size & 1) == 0) {
            return;
        }
        String ahead = bytes.peek(5);
        boolean forgotten = ahead.startsWith("data") || ahead.startsWith("fmt ")
            || ahead.length() == 5 && !isChunkName(ahead.substring(1)) && isChunkName(ahead.substring(0, 4));
        if (!forgotten) {
            bytes.seek(bytes.position() + 1);
        }
    }

    private static boolean isChunkName(String name) {
        return name.length() == 4 && name.chars().allMatch(letter -> letter >= ' ' && letter <= '~');
    }
}
