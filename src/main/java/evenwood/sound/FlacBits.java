package evenwood.sound;

import java.io.IOException;

/**
 * A FLAC file bit by bit, highest bit first, with the check sum of every frame.
 *
 * <p>How: whole bytes are fetched only when their bits are asked for, so that the check sum never runs ahead of the
 * frame. CRC-16 with the polynomial x¹⁶ + x¹⁵ + x² + 1, starting at 0. Source: RFC 9639, 9.3.
 * <p>Thread: one reader; nothing here allocates.
 */
final class FlacBits {
    private static final int POLYNOMIAL = 0x8005;
    /** Far beyond what an encoder writes: so many zeros in a row are damage. */
    private static final int MOST_ZEROS = 1 << 24;
    private static final char[] CRC_16 = table();

    private final FileBytes bytes;
    private int lastByte;
    private int bitsLeft;
    private int crc;

    FlacBits(FileBytes bytes) {
        this.bytes = bytes;
    }

    private static char[] table() {
        char[] table = new char[256];
        for (int value = 0; value < 256; value++) {
            int crc = value << 8;
            for (int bit = 0; bit < 8; bit++) {
                crc = crc << 1 ^ ((crc & 0x8000) != 0 ? POLYNOMIAL : 0);
            }
            table[value] = (char) crc;
        }
        return table;
    }

    /** Forgets the rest of the last byte and starts a new check sum. */
    void startFrame() {
        bitsLeft = 0;
        crc = 0;
    }

    /** Whether the check sum stands at the end of the frame; its own two bytes bring it to 0. */
    boolean frameIsSound() throws IOException {
        bitsLeft = 0;
        bits(16);
        return crc == 0;
    }

    /** Up to 56 bits as a number of 0 or more. */
    long bits(int count) throws IOException {
        long value = lastByte & (1 << bitsLeft) - 1;
        int there = bitsLeft;
        while (there < count) {
            value = value << 8 | fetch();
            there += 8;
        }
        bitsLeft = there - count;
        return value >>> bitsLeft;
    }

    /** Up to 56 bits in two's complement. */
    long signedBits(int count) throws IOException {
        return count == 0 ? 0 : bits(count) << 64 - count >> 64 - count;
    }

    /** How many zeros stand before the next one. */
    int zeros() throws IOException {
        int zeros = 0;
        int rest = lastByte & (1 << bitsLeft) - 1;
        while (rest == 0) {
            zeros += bitsLeft;
            if (zeros > MOST_ZEROS) {
                throw FlacDecoder.damaged();
            }
            rest = fetch();
            bitsLeft = 8;
        }
        int leading = Integer.numberOfLeadingZeros(rest) - (32 - bitsLeft);
        bitsLeft -= leading + 1;
        return zeros + leading;
    }

    private int fetch() throws IOException {
        lastByte = bytes.u8();
        crc = (crc << 8 ^ CRC_16[(crc >> 8 ^ lastByte) & 0xFF]) & 0xFFFF;
        return lastByte;
    }
}
