package evenwood.sound;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * The bytes in front of the samples of a mono WAV file, first without and later with their lengths.
 *
 * <p>Layout: RIFF, a place of 28 bytes that can become {@code ds64}, {@code fmt}, for floats {@code fact}, {@code data}.
 * Source: reference §15; EBU Tech 3306.
 */
final class WavFileHeader {
    /** RIFF counts its bytes in 32 bits. */
    static final long MOST_RIFF_BYTES = 0xFFFF_FFFFL;
    private static final int UNKNOWN_SIZE = 0xFFFF_FFFF;
    private static final int DS64_BYTES = 28;
    private static final int PCM = 1;
    private static final int IEEE_FLOAT = 3;

    private final int sampleRateHz;
    private final int bits;
    private final boolean isFloat;
    private final long mostRiffBytes;

    WavFileHeader(int sampleRateHz, int bits, boolean isFloat, long mostRiffBytes) {
        this.sampleRateHz = sampleRateHz;
        this.bits = bits;
        this.isFloat = isFloat;
        this.mostRiffBytes = mostRiffBytes;
    }

    private int size() {
        return 12 + 8 + DS64_BYTES + (isFloat ? 26 + 12 : 24) + 8;
    }

    /** For a file still being written: both sizes unknown, which readers take as "to the end". */
    byte[] unfinished() {
        return header("RIFF", UNKNOWN_SIZE, UNKNOWN_SIZE, -1);
    }

    byte[] finished(long dataBytes) {
        long riffBytes = size() - 8 + dataBytes + (dataBytes & 1);
        return riffBytes > mostRiffBytes ? header("RF64", UNKNOWN_SIZE, UNKNOWN_SIZE, dataBytes)
            : header("RIFF", (int) riffBytes, (int) dataBytes, dataBytes);
    }

    private byte[] header(String kind, int riffSize, int dataSize, long dataBytes) {
        int bytesPerFrame = bits / 8;
        ByteBuffer out = ByteBuffer.allocate(size()).order(ByteOrder.LITTLE_ENDIAN);
        letters(out, kind).putInt(riffSize);
        letters(out, "WAVE");
        if (kind.equals("RF64")) {
            letters(out, "ds64").putInt(DS64_BYTES).putLong(size() - 8 + dataBytes + (dataBytes & 1)).putLong(dataBytes)
                .putLong(dataBytes / bytesPerFrame).putInt(0);
        } else {
            letters(out, "JUNK").putInt(DS64_BYTES).put(new byte[DS64_BYTES]);
        }
        letters(out, "fmt ").putInt(isFloat ? 18 : 16).putShort((short) (isFloat ? IEEE_FLOAT : PCM)).putShort((short) 1)
            .putInt(sampleRateHz).putInt(sampleRateHz * bytesPerFrame).putShort((short) bytesPerFrame).putShort((short) bits);
        if (isFloat) {
            out.putShort((short) 0);
            letters(out, "fact").putInt(4).putInt((int) Math.min(0xFFFF_FFFFL, dataBytes / bytesPerFrame));
        }
        letters(out, "data").putInt(dataSize);
        return out.array();
    }

    private static ByteBuffer letters(ByteBuffer out, String letters) {
        return out.put(letters.getBytes(StandardCharsets.ISO_8859_1));
    }
}
