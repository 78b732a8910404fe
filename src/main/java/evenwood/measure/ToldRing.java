package evenwood.measure;

/** A howl that was told, and whether it is still there. One owner. */
final class ToldRing {
    private static final int HOPS_UNTIL_SURE = 12;
    private static final int HOPS_UNTIL_FORGOTTEN = 24;
    private static final double FALL_OF_A_NEAR_HOWL_DB = 6;
    private static final double RISE_OF_A_SURE_HOWL_DB = 20;
    private static final double LEAST_PROMINENCE_DB = 6;
    private static final int HOPS_UNTIL_GROWN = 6;
    private static final double LEAST_GROWTH_SOON = 0.3;
    private static final double LEAST_GROWTH_LATER = 0.45;
    private static final double STEADY_DB = 0.8;
    private static final double SAME_BINS = 2.5;
    private static final double HARMONIC_BINS = 1.5;
    private static final int HIGHEST_HARMONIC = 7;

    private final Ring ring;
    private final double peakBin;
    private final long toldHop;
    private final double toldDb;
    private final double riseDb;
    private final double growthDbPerHop;
    private long lastHop;
    private long ageHops;
    private double highestDb;
    private double nowDb;
    private double soonDb;
    private double loudestPlayingDb;

    ToldRing(Ring ring, double peakBin, long hop, double levelDb, double riseDb, double growthDbPerHop) {
        this.ring = ring;
        this.peakBin = peakBin;
        this.riseDb = riseDb;
        this.growthDbPerHop = growthDbPerHop;
        toldHop = hop;
        lastHop = hop;
        toldDb = levelDb;
        highestDb = levelDb;
        nowDb = levelDb;
        soonDb = levelDb;
    }

    Ring ring() {
        return ring;
    }

    int bin() {
        return (int) Math.round(peakBin);
    }

    boolean isFollowed(long hop) {
        return hop - lastHop <= HOPS_UNTIL_FORGOTTEN;
    }

    /** @param loudestPlayingDb the loudest hop of before the last second */
    void heard(long hop, double levelDb, double prominenceDb, double loudestPlayingDb) {
        nowDb = levelDb;
        this.loudestPlayingDb = loudestPlayingDb;
        highestDb = Math.max(highestDb, levelDb);
        if (prominenceDb > LEAST_PROMINENCE_DB) {
            lastHop = hop;
        }
        ageHops = hop - toldHop;
        soonDb = ageHops == HOPS_UNTIL_GROWN ? levelDb : soonDb;
    }

    /** Fell right after being told without having grown much: a near-howl, which is no howl. */
    boolean diedAtOnce() {
        return ageHops <= HOPS_UNTIL_SURE && nowDb < toldDb - FALL_OF_A_NEAR_HOWL_DB
            && riseDb + highestDb - toldDb < RISE_OF_A_SURE_HOWL_DB;
    }

    /**
     * Did not grow on as it had, nor stands still louder than all playing, as a loop at its limit does: two partials that beat.
     * Asked twice, a quarter and half a second after it was told.
     */
    boolean stoppedGrowing() {
        double grownDb = highestDb - toldDb;
        double expectedDb = growthDbPerHop * ageHops;
        return riseDb < RISE_OF_A_SURE_HOWL_DB
            && (ageHops == HOPS_UNTIL_GROWN && grownDb < LEAST_GROWTH_SOON * expectedDb && nowDb < loudestPlayingDb
            || ageHops == HOPS_UNTIL_SURE && grownDb < LEAST_GROWTH_LATER * expectedDb && !isAtTheLimit());
    }

    private boolean isAtTheLimit() {
        return nowDb > loudestPlayingDb && Math.abs(nowDb - soonDb) < STEADY_DB;
    }

    /** Whether a peak is this howl again, or a harmonic that the amplifier's limit makes of it. */
    boolean explains(double otherPeakBin, long hop) {
        if (!isFollowed(hop)) {
            return false;
        }
        for (int harmonic = 1; harmonic <= HIGHEST_HARMONIC; harmonic++) {
            if (Math.abs(otherPeakBin - harmonic * peakBin) < (harmonic == 1 ? SAME_BINS : HARMONIC_BINS)) {
                return true;
            }
        }
        return false;
    }
}
