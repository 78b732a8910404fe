package evenwood.journal;

/**
 * One reading of one take.
 *
 * @param takeId     its number
 * @param keptMillis when, milliseconds since 1970 UTC
 * @param value      finite
 */
public record ReadingPoint(long takeId, long keptMillis, double value) {
    private static final double MILLIS_PER_DAY = 86_400_000;

    public double days() {
        return keptMillis / MILLIS_PER_DAY;
    }
}
