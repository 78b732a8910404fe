package evenwood.measure;

/** A howl that was told, and whether it is still there. One owner. */
final class ToldRing {
    private static final int HOPS_UNTIL_SURE = 12;
    private static final int HOPS_UNTIL_FORGOTTEN = 24;
    private static final double FALL_OF_A_NEAR_HOWL_DB = 6;
    private static final double RISE_OF_A_SURE_HOWL_DB = 20;
    private static final double LEAST_PROMINENCE_DB = 6;
    private static final double SAME_BINS = 2.5;
    private static final double HARMONIC_BINS = 1.5;
    private static final int HIGHEST_HARMONIC = 7;

    private final Ring ring;
    private final double peakBin;
    private final long toldHop;
    private final double toldDb;
    private final double riseDb;
    private long lastHop;
    private long ageHops;
    private double highestDb;
    private double nowDb;

    ToldRing(Ring ring, double peakBin, long hop, double levelDb, double riseDb) {
        this.ring = ring;
        this.peakBin = peakBin;
        this.riseDb = riseDb;
        toldHop = hop;
        lastHop = hop;
        toldDb = levelDb;
        highestDb = levelDb;
        nowDb = levelDb;
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

    void heard(long hop, double levelDb, double prominenceDb) {
        nowDb = levelDb;
        highestDb = Math.max(highestDb, levelDb);
        if (prominenceDb > LEAST_PROMINENCE_DB) {
            lastHop = hop;
        }
        ageHops = hop - toldHop;
    }

    /** Fell right after being told without having grown much: a near-howl, which is no howl. */
    boolean diedAtOnce() {
        return ageHops <= HOPS_UNTIL_SURE && nowDb < toldDb - FALL_OF_A_NEAR_HOWL_DB
            && riseDb + highestDb - toldDb < RISE_OF_A_SURE_HOWL_DB;
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
