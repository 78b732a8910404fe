package evenwood.measure;

/**
 * When somebody played and when the instrument rested, hop by hop on the {@link HopGrid}.
 *
 * <p>A hop is {@link #PLAYING}, {@link #QUIET}, or {@link #NEITHER} (a note dying away into the noise, a handling
 * noise, the edge between the two): what needs playing uses only playing hops, what needs quiet only quiet ones.
 *
 * @param grid      the clock
 * @param firstHop  number in the take of the first hop told of
 * @param states    one state a hop, from {@code firstHop} on; not to be changed
 * @param floorDbfs level of the quiet parts, plain RMS; −Infinity for digital silence; NaN is never used: when no quiet
 *                  hop was heard it is the best upper bound and {@code hasQuiet()} is false
 */
public record ActivityReading(HopGrid grid, long firstHop, byte[] states, double floorDbfs) {
    public static final byte NEITHER = 0;
    public static final byte PLAYING = 1;
    public static final byte QUIET = 2;

    public boolean isPlaying(long hop) {
        return state(hop) == PLAYING;
    }

    public boolean isQuiet(long hop) {
        return state(hop) == QUIET;
    }

    /** {@link #NEITHER} for a hop not told of. */
    public byte state(long hop) {
        long index = hop - firstHop;
        return index < 0 || index >= states.length ? NEITHER : states[(int) index];
    }

    public boolean hasQuiet() {
        return quietSeconds() > 0;
    }

    public double playingSeconds() {
        return count(PLAYING) * grid.hopSeconds();
    }

    public double quietSeconds() {
        return count(QUIET) * grid.hopSeconds();
    }

    private int count(byte wanted) {
        int count = 0;
        for (byte state : states) {
            if (state == wanted) {
                count++;
            }
        }
        return count;
    }
}
