package evenwood.sound;

import com.jcraft.jogg.Buffer;

/**
 * The code books in a Vorbis setup, looked through for absurd sizes; a part of {@link VorbisSetup}.
 *
 * <p>Source of the layout: Vorbis I specification, 3.2.1. Limits: our choice, several times what the reference encoder
 * writes (all its qualities pass in SoundFilesReferenceTest).
 */
final class VorbisCodeBooks {
    private static final int SYNC = 0x564342;
    private static final int MOST_VALUES_OF_A_BOOK = 1 << 18;
    private static final int MOST_VALUES = 1 << 20;

    private final Buffer bits;
    private final int[] dimensions;

    private VorbisCodeBooks(Buffer bits, int books) {
        this.bits = bits;
        dimensions = new int[books];
    }

    /** Steps over the books; says how many dimensions each has, or null when they are of no size one meets. */
    static int[] dimensions(Buffer bits) {
        VorbisCodeBooks books = new VorbisCodeBooks(bits, bits.read(8) + 1);
        long values = 0;
        for (int book = 0; book < books.dimensions.length; book++) {
            long more = books.valuesOfBook(book);
            values += more;
            if (more < 0 || values > MOST_VALUES) {
                return null;
            }
        }
        return books.dimensions;
    }

    /** Entries times dimensions of the next book; −1 when it is none. */
    private long valuesOfBook(int book) {
        int sync = bits.read(24);
        int dims = bits.read(16);
        int entries = bits.read(24);
        if (sync != SYNC || dims < 1 || entries < 1 || (long) dims * entries > MOST_VALUES_OF_A_BOOK) {
            return -1;
        }
        dimensions[book] = dims;
        boolean lengthsFit = bits.read(1) == 1 ? orderedLengths(entries) : plainLengths(entries);
        return lengthsFit && lookup(dims, entries) ? (long) dims * entries : -1;
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

    private boolean lookup(int dims, int entries) {
        int kind = bits.read(4);
        if (kind == 0) {
            return true;
        }
        bits.read(32);
        bits.read(32);
        int width = bits.read(4) + 1;
        bits.read(1);
        int steps = kind == 1 ? stepsPerDimension(dims, entries) : kind == 2 ? dims * entries : -1;
        for (int i = 0; i < steps; i++) {
            bits.read(width);
        }
        return steps > 0 && !outOfBits();
    }

    /** The greatest number whose power is not above the entries; −1 where the next power would overflow the decoder. */
    private static int stepsPerDimension(int dims, int entries) {
        int steps = 1;
        while (Math.pow(steps + 1.0, dims) <= entries) {
            steps++;
        }
        return Math.pow(steps + 1.0, dims) > Integer.MAX_VALUE ? -1 : steps;
    }
}
