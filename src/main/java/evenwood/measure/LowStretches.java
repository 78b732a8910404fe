package evenwood.measure;

import java.util.function.LongPredicate;

/**
 * The kept low-rate sound as stretches of unbroken, wanted hops, cut into pieces of equal length for a line spectrum.
 *
 * <p>Pieces overlap by half. Their length is the longest unbroken stretch, at most {@code mostHops}; stretches shorter
 * than that give nothing. When there are more than {@code mostPieces}, an evenly spread choice is taken, so that the
 * work of one reading is bounded.
 */
final class LowStretches {
    private final NoiseMemory memory;
    private final int[] slots;
    private final int pieceHops;
    private final long[] pieceStarts;
    private final int pieces;

    LowStretches(NoiseMemory memory, LongPredicate wanted, int mostHops, int mostPieces) {
        this(memory, wanted, mostHops, 0, mostPieces);
    }

    /** Everything from a hop on, cut into pieces of a given length and distance. */
    static LowStretches newest(NoiseMemory memory, long fromHop, int pieceHops, int stepHops) {
        return new LowStretches(memory, hop -> hop >= fromHop, pieceHops, stepHops, Integer.MAX_VALUE);
    }

    /** @param wantedStep distance of the pieces in hops; 0 for half their length */
    private LowStretches(NoiseMemory memory, LongPredicate wanted, int mostHops, int wantedStep, int mostPieces) {
        this.memory = memory;
        slots = memory.slotsInOrder();
        int longest = 0;
        for (Run run = new Run(wanted); run.next();) {
            longest = Math.max(longest, run.hops);
        }
        pieceHops = Math.min(mostHops, longest);
        long[] starts = new long[2 * NoiseMemory.HOPS_PER_SLOT * slots.length + 1];
        int count = 0;
        if (pieceHops > 0) {
            int step = wantedStep > 0 ? wantedStep : Math.max(1, pieceHops / 2);
            for (Run run = new Run(wanted); run.next();) {
                for (int at = 0; at + pieceHops <= run.hops; at += step) {
                    starts[count++] = run.firstHop + at;
                }
            }
        }
        pieces = Math.min(count, mostPieces);
        pieceStarts = new long[pieces];
        for (int i = 0; i < pieces; i++) {
            pieceStarts[i] = starts[(int) ((long) i * count / pieces)];
        }
    }

    int pieces() {
        return pieces;
    }

    int pieceHops() {
        return pieceHops;
    }

    int pieceFrames() {
        return pieceHops * LowRateStream.FRAMES_PER_HOP;
    }

    /** The hop a piece starts with. */
    long pieceStart(int piece) {
        return pieceStarts[piece];
    }

    void copyPiece(int piece, float[] out) {
        long first = pieceStarts[piece];
        int position = positionOf(first);
        int done = 0;
        for (long hop = first; hop < first + pieceHops; hop++) {
            while (hop >= memory.firstHop(slots[position]) + NoiseMemory.HOPS_PER_SLOT) {
                position++;
            }
            int offset = (int) (hop - memory.firstHop(slots[position])) * LowRateStream.FRAMES_PER_HOP;
            System.arraycopy(memory.low(slots[position]), offset, out, done, LowRateStream.FRAMES_PER_HOP);
            done += LowRateStream.FRAMES_PER_HOP;
        }
    }

    private int positionOf(long hop) {
        int low = 0;
        int high = slots.length - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (memory.firstHop(slots[middle]) <= hop) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    /** Walks over the unbroken stretches of wanted hops. */
    private final class Run {
        private final LongPredicate wanted;
        private int index;
        private long firstHop;
        private int hops;

        Run(LongPredicate wanted) {
            this.wanted = wanted;
        }

        boolean next() {
            int end = slots.length * NoiseMemory.HOPS_PER_SLOT;
            while (index < end && !wanted.test(hop(index))) {
                index++;
            }
            if (index == end) {
                return false;
            }
            firstHop = hop(index);
            hops = 0;
            while (index < end && hop(index) == firstHop + hops && wanted.test(hop(index))) {
                hops++;
                index++;
            }
            return true;
        }

        private long hop(int i) {
            return memory.firstHop(slots[i / NoiseMemory.HOPS_PER_SLOT]) + i % NoiseMemory.HOPS_PER_SLOT;
        }
    }
}
