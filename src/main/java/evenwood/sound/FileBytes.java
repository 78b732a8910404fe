package evenwood.sound;

import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * A file's bytes, read forwards through one buffer of constant size.
 *
 * <p>A {@link RandomAccessFile} and no channel, because a channel closes itself when its reader is interrupted, and a
 * take that is being stopped must still be finished. The length is that of the moment of opening.
 * <p>Thread: one owner. Reading allocates nothing.
 */
final class FileBytes implements Closeable {
    static final int BUFFER_BYTES = 1 << 16;
    /** Decoders may look this far behind the last byte, so that three bytes can be fetched as four. */
    static final int SLACK_BYTES = 8;

    private final RandomAccessFile file;
    private final long length;
    private final byte[] buffer = new byte[BUFFER_BYTES + SLACK_BYTES];
    private long bufferStart;
    private int next;
    private int end;

    FileBytes(Path path) throws IOException {
        file = new RandomAccessFile(path.toFile(), "r");
        length = file.length();
    }

    long length() {
        return length;
    }

    long position() {
        return bufferStart + next;
    }

    long remaining() {
        return Math.max(0, length - position());
    }

    /** Goes to a place in the file; beyond the end is allowed and leaves nothing to read. */
    void seek(long position) throws IOException {
        if (position >= bufferStart && position <= bufferStart + end) {
            next = (int) (position - bufferStart);
            return;
        }
        file.seek(position);
        bufferStart = position;
        next = 0;
        end = 0;
    }

    /** Tries to have so many bytes at hand, at most the buffer's size; says how many there are, less only at the end. */
    int have(int bytes) throws IOException {
        if (end - next >= bytes) {
            return end - next;
        }
        System.arraycopy(buffer, next, buffer, 0, end - next);
        bufferStart += next;
        end -= next;
        next = 0;
        while (end < bytes) {
            int n = file.read(buffer, end, BUFFER_BYTES - end);
            if (n < 0) {
                break;
            }
            end += n;
        }
        return end;
    }

    /** The buffer itself, for decoding loops; the bytes at hand start at {@link #at()}. */
    byte[] buffer() {
        return buffer;
    }

    int at() {
        return next;
    }

    /** Steps over bytes that are at hand. */
    void advance(int bytes) {
        next += bytes;
    }

    private int take(int bytes) throws IOException {
        if (have(bytes) < bytes) {
            throw new EOFException();
        }
        int first = next;
        next += bytes;
        return first;
    }

    int u8() throws IOException {
        return buffer[take(1)] & 0xFF;
    }

    int u16LittleEndian() throws IOException {
        int low = u8();
        return u8() << 8 | low;
    }

    int u16BigEndian() throws IOException {
        int high = u8();
        return high << 8 | u8();
    }

    long u32LittleEndian() throws IOException {
        long low = u16LittleEndian();
        return (long) u16LittleEndian() << 16 | low;
    }

    long u32BigEndian() throws IOException {
        long high = u16BigEndian();
        return high << 16 | u16BigEndian();
    }

    /** Eight bytes as a signed number; negative means an absurd size. */
    long i64LittleEndian() throws IOException {
        long low = u32LittleEndian();
        return u32LittleEndian() << 32 | low;
    }

    /** A four-letter chunk name; bytes that are no ASCII come out as question marks or controls. */
    String fourLetters() throws IOException {
        return new String(buffer, take(4), 4, StandardCharsets.ISO_8859_1);
    }

    /** A copy of the next few bytes, for headers. */
    byte[] bytes(int bytes) throws IOException {
        int first = take(bytes);
        return Arrays.copyOfRange(buffer, first, first + bytes);
    }

    /** The next bytes as text without stepping over them; shorter at the end of the file. */
    String peek(int bytes) throws IOException {
        int there = Math.min(bytes, have(bytes));
        return new String(buffer, next, there, StandardCharsets.ISO_8859_1);
    }

    /** From here to the end as a stream, for decoders that want one. Closing it leaves the file open. */
    InputStream stream() {
        return new InputStream() {
            @Override
            public int read() throws IOException {
                return have(1) < 1 ? -1 : buffer[next++] & 0xFF;
            }

            @Override
            public int read(byte[] into, int offset, int bytes) throws IOException {
                int n = Math.min(bytes, have(1));
                if (n < 1) {
                    return bytes == 0 ? 0 : -1;
                }
                System.arraycopy(buffer, next, into, offset, n);
                next += n;
                return n;
            }
        };
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
