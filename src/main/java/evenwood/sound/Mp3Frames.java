package evenwood.sound;

import java.io.IOException;
import java.io.InputStream;
import java.util.OptionalLong;

/**
 * The coded frames of an MP3 file, one after the other, without the tags around them.
 *
 * <p>As a stream it gives the bytes of the current frame and then says it is over, until {@link #next} opens the next
 * one. So the decoder sees whole frames only and cannot search for sync by itself: where a frame should begin there is
 * one, or a known tag, or the end, or the file is damaged. The file was cut short when fewer frames came than its first one
 * notes (Xing, Info or VBRI), or, without that note, when its last frame is not whole; cut between two frames it cannot be told.
 * <p>Thread: one reader.
 */
final class Mp3Frames extends InputStream {
    /** Junk before the first frame is rarely more than a sector; beyond this it is no MP3 file. */
    private static final int MOST_JUNK_BYTES = 1 << 15;
    private static final int ID3V1_BYTES = 128;
    /** Writers count the frame that holds the note, or do not. */
    private static final int NOTE_TOLERANCE = 1;
    private static final long UNKNOWN_COUNT = 0xFFFF_FFFFL;

    private final FileBytes bytes;
    private final Mp3FrameHeader first;
    private OptionalLong lengthFrames = OptionalLong.empty();
    private long noted;
    private long opened;
    private Mp3FrameHeader current;
    private int left;

    private Mp3Frames(FileBytes bytes, Mp3FrameHeader first) throws IOException {
        this.bytes = bytes;
        this.first = first;
        skipNoteFrame();
    }

    /** Looks for the first frame from here on; null if this is no MP3 file. */
    static Mp3Frames find(FileBytes bytes) throws IOException {
        skipTags(bytes);
        long start = bytes.position();
        for (int junk = 0; junk < MOST_JUNK_BYTES; junk++) {
            bytes.seek(start + junk);
            if (bytes.remaining() == 0) {
                return null;
            }
            Mp3FrameHeader header = headerHere(bytes);
            if (header != null && secondFollows(bytes, header)) {
                return new Mp3Frames(bytes, header);
            }
        }
        return null;
    }

    private static boolean secondFollows(FileBytes bytes, Mp3FrameHeader header) throws IOException {
        long here = bytes.position();
        bytes.seek(here + header.sizeBytes());
        boolean follows = bytes.remaining() == 0 || header.goesWith(headerHere(bytes));
        bytes.seek(here);
        return follows;
    }

    private static Mp3FrameHeader headerHere(FileBytes bytes) throws IOException {
        if (bytes.have(4) < 4) {
            return null;
        }
        byte[] buffer = bytes.buffer();
        int at = bytes.at();
        return Mp3FrameHeader.of(buffer[at] << 24 | (buffer[at + 1] & 0xFF) << 16 | (buffer[at + 2] & 0xFF) << 8
            | buffer[at + 3] & 0xFF);
    }

    Mp3FrameHeader first() {
        return first;
    }

    /** Length of the take when the file's first frame notes it. */
    OptionalLong lengthFrames() {
        return lengthFrames;
    }

    /** Opens the next frame; null when there is none. */
    Mp3FrameHeader next() throws IOException {
        bytes.advance(Math.min(left, bytes.have(left)));
        left = 0;
        skipTags(bytes);
        current = headerHere(bytes);
        if (current == null && nothingButATag()) {
            refuseACut(false);
            return null;
        }
        if (!first.goesWith(current)) {
            throw damaged(null);
        }
        left = current.sizeBytes();
        if (bytes.remaining() < left) {
            refuseACut(true);
            return null;
        }
        opened++;
        return current;
    }

    private void refuseACut(boolean lastFrameIsCut) throws FileFault {
        if (noted > 0 ? opened < noted - NOTE_TOLERANCE : lastFrameIsCut) {
            throw new FileFault(SoundTrouble.FILE_CUT_SHORT, "the MP3 file is cut short", FileFault.EXPORT_AGAIN);
        }
    }

    static FileFault damaged(Exception cause) {
        return new FileFault(SoundTrouble.FILE_BROKEN, "the MP3 stream is damaged", FileFault.EXPORT_AGAIN, cause);
    }

    /** ID3v2 tags, also several, and zero bytes some writers leave behind them. */
    private static void skipTags(FileBytes bytes) throws IOException {
        while (skipTag(bytes)) { }
        while (bytes.have(1) > 0 && bytes.buffer()[bytes.at()] == 0) {
            bytes.advance(1);
        }
    }

    /** Steps over one ID3v2 tag, if there is one here. */
    static boolean skipTag(FileBytes bytes) throws IOException {
        boolean there = bytes.peek(3).equals("ID3") && bytes.have(10) >= 10;
        if (there) {
            bytes.seek(bytes.position() + id3Bytes(bytes));
        }
        return there;
    }

    /** Ten bytes and a size in four times seven bits; a footer repeats the ten. */
    private static int id3Bytes(FileBytes bytes) {
        byte[] buffer = bytes.buffer();
        int at = bytes.at();
        int size = 0;
        for (int i = 6; i < 10; i++) {
            size = size << 7 | buffer[at + i] & 0x7F;
        }
        return size + ((buffer[at + 5] & 0x10) != 0 ? 20 : 10);
    }

    private boolean nothingButATag() throws IOException {
        String ahead = bytes.peek(11);
        return bytes.remaining() < 4 || ahead.startsWith("TAG") && bytes.remaining() <= ID3V1_BYTES
            || ahead.startsWith("APETAGEX") || ahead.startsWith("LYRICSBEGIN");
    }

    /** The first frame of many files is silent and notes how many follow; it is no part of the take. */
    private void skipNoteFrame() throws IOException {
        int size = Math.min(first.sizeBytes(), bytes.have(first.sizeBytes()));
        String frame = bytes.peek(size);
        String xing = frame.substring(Math.min(size, first.noteOffset()));
        boolean isXing = xing.startsWith("Xing") || xing.startsWith("Info");
        if (isXing && xing.length() >= 12 && (xing.charAt(7) & 1) != 0) {
            noteLength(xing, 8);
        } else if (frame.startsWith("VBRI", 36) && size >= 54) {
            noteLength(frame, 50);
        }
        if (isXing || frame.startsWith("VBRI", 36)) {
            bytes.advance(size);
        }
    }

    private void noteLength(String text, int at) {
        long coded = (long) text.charAt(at) << 24 | text.charAt(at + 1) << 16 | text.charAt(at + 2) << 8 | text.charAt(at + 3);
        noted = coded == UNKNOWN_COUNT ? 0 : coded;
        if (coded > 0 && coded <= bytes.remaining() / 24) {
            lengthFrames = OptionalLong.of(coded * first.frames());
        }
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 1 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] into, int offset, int most) throws IOException {
        int n = Math.min(Math.min(most, left), bytes.have(1));
        if (n < 1) {
            return -1;
        }
        System.arraycopy(bytes.buffer(), bytes.at(), into, offset, n);
        bytes.advance(n);
        left -= n;
        return n;
    }
}
