package evenwood.measure;

/**
 * What a meter remembers of a take: one row of numbers a hop, for the last {@code capacityHops} hops.
 *
 * <p>Rows are numbered by their hop in the take, so row numbers keep growing when old rows fall out; a live take of
 * eight hours needs no more room than one of minutes. Only the constructor allocates.
 * <p>Thread: one owner.
 */
public final class HopHistory {
    private final float[] values;
    private final int columns;
    private final int capacityHops;
    private long endHop;

    public HopHistory(int capacityHops, int columns) {
        if (capacityHops < 1 || columns < 1 || (long) capacityHops * columns > Integer.MAX_VALUE - 8) {
            throw new IllegalArgumentException("hop history: capacityHops=" + capacityHops + ", columns=" + columns
                + ", but both must be positive and their product must fit one array");
        }
        this.capacityHops = capacityHops;
        this.columns = columns;
        values = new float[capacityHops * columns];
    }

    public int columns() {
        return columns;
    }

    /** The oldest hop still remembered. */
    public long firstHop() {
        return Math.max(0, endHop - capacityHops);
    }

    /** One past the newest hop. */
    public long endHop() {
        return endHop;
    }

    public float get(long hop, int column) {
        return values[index(hop) + column];
    }

    /** Adds a whole row to sums of at least {@link #columns()} entries. */
    public void addRowTo(long hop, double[] sums) {
        int start = index(hop);
        for (int column = 0; column < columns; column++) {
            sums[column] += values[start + column];
        }
    }

    /** Copies all columns of a row. */
    public void copyRow(long hop, float[] into, int at) {
        System.arraycopy(values, index(hop), into, at, columns);
    }

    /** Opens the next row, all zeros, and returns its hop. [audio thread] */
    public long append() {
        int start = (int) (endHop % capacityHops) * columns;
        java.util.Arrays.fill(values, start, start + columns, 0f);
        return endHop++;
    }

    public void set(long hop, int column, float value) {
        values[index(hop) + column] = value;
    }

    public void reset() {
        endHop = 0;
    }

    private int index(long hop) {
        if (hop < firstHop() || hop >= endHop) {
            throw new IndexOutOfBoundsException("hop history: hop=" + hop + ", but hops " + firstHop() + " to "
                + (endHop - 1) + " are remembered");
        }
        return (int) (hop % capacityHops) * columns;
    }
}
