package evenwood.sound;

import com.jcraft.jogg.Buffer;
import com.jcraft.jogg.Packet;

/**
 * Looks through the code books of a Vorbis stream before the decoder does, which believes any size they claim: a few
 * crafted bytes could make it reserve hundreds of megabytes or search for ever.
 *
 * <p>How: walks the books as the decoder will, without keeping anything. Source of the layout: Vorbis I specification,
 * 3.2.1. Limits: our choice, several times what the reference encoder ever writes.
 */
final class VorbisCodeBooks {
    private static final int HEADER_BYTES = 7;
    private static final int SYNC = 0x564342;
    private static final int MOST_VALUES_OF_A_BOOK = 1 << 18;
    private static final int MOST_VALUES = 1 << 20;

    private final Buffer bits = new Buffer();

    private VorbisCodeBooks(Packet packet) {
        bits.readinit(packet.packet_base, packet.packet + HEADER_BYTES, Math.max(0, packet.bytes - HEADER_BYTES));
    }

    /** Whether the books of this third header packet are of a size one meets. */
    static boolean areSound(Packet packet) {
        return new VorbisCodeBooks(packet).areSound();
    }

    private boolean areSound() {
        int books = bits.read(8) + 1;
        long values = 0;
        for (int book = 0; book < books; book++) {
            long more = valuesOfBook();
            values += more;
            if (more < 0 || values > MOST_VALUES) {
                return false;
            }
        }
        return true;
    }

    /** Entries times dimensions of the next book; −1 when it is none. */
    private long valuesOfBook() {
        int sync = bits.read(24);
        int dimensions = bits.read(16);
        int entries = bits.read(24);
        if (sync != SYNC || dimensions < 1 || entries < 1 || (long) dimensions * entries > MOST_VALUES_OF_A_BOOK) {
            return -1;
        }
        boolean lengthsFit = bits.read(1) == 1 ? orderedLengths(entries) : plainLengths(entries);
        return lengthsFit && lookup(dimensions, entries) ? (long) dimensions * entries : -1;
    }

    private boolean orderedLengths(int entries) {
        bits.read(5);
        int entry = 0;
        while (entry < entries) {
            int count = bits.read(32 - Integer.numberOfLeadingZeros(entries - entry));
            if (count < 1 && outOfBits() || count < 0 || count > entries - entry) {
                return false;
            }
            entry += count;
        }
        return true;
    }

    private boolean plainLengths(int entries) {
        boolean sparse = bits.read(1) == 1;
        for (int entry = 0; entry < entries; entry++) {
            if ((!sparse || bits.read(1) == 1) && bits.read(5) < 0) {
                return false;
            }
        }
        return true;
    }

    private boolean outOfBits() {
        return bits.look1() < 0;
    }

    private boolean lookup(int dimensions, int entries) {
        int kind = bits.read(4);
        if (kind == 0) {
            return true;
        }
        bits.read(32);
        bits.read(32);
        int width = bits.read(4) + 1;
        bits.read(1);
        int steps = kind == 1 ? stepsPerDimension(dimensions, entries) : kind == 2 ? dimensions * entries : -1;
        for (int i = 0; i < steps; i++) {
            bits.read(width);
        }
        return steps > 0 && !outOfBits();
    }

    /** The greatest number whose power is not above the entries; −1 where the next power would overflow the decoder. */
    private static int stepsPerDimension(int dimensions, int entries) {
        int steps = 1;
        while (Math.pow(steps + 1.0, dimensions) <= entries) {
            steps++;
        }
        return Math.pow(steps + 1.0, dimensions) > Integer.MAX_VALUE ? -1 : steps;
    }
}
