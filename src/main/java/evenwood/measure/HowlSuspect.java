package evenwood.measure;

/**
 * Looks at one peak of the newest spectrum and says whether it is a howl that grows, or one that has grown to the limit.
 *
 * <p>How: (a) {@link GrowthLine} and {@link HowlOdds}; (b) growth too fast for hops to follow ends at the amplifier's
 * limit: one steady line that makes most of the sound, without second harmonic, louder than all playing before.
 * <p>Thread: one owner; nothing here allocates.
 */
final class HowlSuspect {
    static final int FARTHEST_AROUND = 100;

    private static final double HOP_OF_ODDS_SECONDS = 2048 / 48_000.0;
    private static final double FAINTEST_PARTNER_DB = -45;
    private static final double[] PARTNER_RATIOS = {1 / 5.0, 1 / 4.0, 1 / 3.0, 1 / 2.0, 2 / 3.0, 3 / 4.0, 4 / 5.0, 5 / 6.0,
        7 / 6.0, 6 / 5.0, 5 / 4.0, 4 / 3.0, 3 / 2.0, 2, 3, 4};
    /** Slower growth of the whole neighbourhood is someone turning up, not a loop. */
    private static final double FASTEST_HAND_DB_PER_SECOND = 60;
    private static final double STRONG_OCTAVE_DB = -12;
    private static final double STRONG_OCTAVE_RISE = 0.6;
    private static final double LEAST_OVER_BEFORE_DB = 3;
    private static final double LIMIT_SECONDS = 0.3;
    private static final double LIMIT_BELOW_ALL_DB = 1.5;
    private static final double LIMIT_LEVEL_RANGE_DB = 0.8;
    private static final double LIMIT_WANDER_BINS = 0.02;
    private static final double LIMIT_SECOND_HARMONIC_DB = -40;
    private static final double LIMIT_OVER_PLAYING_DB = 2;

    private final RecentSpectra spectra;
    private final double hopSeconds;
    private final double[] levelsDb;
    private final GrowthLine growth = new GrowthLine();
    private final HowlOdds odds = new HowlOdds();
    private final int limitHops;
    private int growthHops;
    private double growthDbPerSecond;
    private double riseDb;

    HowlSuspect(RecentSpectra spectra, double hopSeconds) {
        this.spectra = spectra;
        this.hopSeconds = hopSeconds;
        levelsDb = new double[spectra.capacity()];
        limitHops = (int) Math.ceil(LIMIT_SECONDS / hopSeconds);
    }

    /** Whether the peak at a bin howls; {@code loudestPlayingDb} is the loudest hop of before the last second. */
    boolean howls(int bin, double loudestPlayingDb) {
        int depth = look(bin);
        return grows(bin, depth) || hasReachedTheLimit(bin, depth, loudestPlayingDb);
    }

    /** How many hops ago the growth began. */
    int growthHops() {
        return growthHops;
    }

    double growthDbPerSecond() {
        return growthDbPerSecond;
    }

    double riseDb() {
        return riseDb;
    }

    private boolean grows(int bin, int depth) {
        if (!describe(bin, depth)) {
            return false;
        }
        // A partner only lowers the odds and costs most to find, so it is looked for last.
        if (!odds.areEnough() || isTurnedUp(bin)) {
            return false;
        }
        odds.describePartner(partnerDb(bin));
        return odds.areEnough() && !swellsWithItsOctave(bin);
    }

    /** A note that swells brings its partials along, nearly as loud; a loop makes none before the amplifier's limit. */
    private boolean swellsWithItsOctave(int bin) {
        double peak = spectra.peakBin(0, bin);
        return isStrongAndRisen((int) Math.round(2 * peak)) || isStrongAndRisen((int) Math.round(peak / 2));
    }

    private boolean isStrongAndRisen(int octave) {
        return octave >= 3 && octave < spectra.bins() - 3
            && spectra.levelDb(0, octave) - levelsDb[0] > STRONG_OCTAVE_DB
            && spectra.levelDb(0, octave) - spectra.levelDb(growthHops - 1, octave) > STRONG_OCTAVE_RISE * riseDb;
    }

    /** Finds the growth that ends now and describes all but the partner; false where there is none. */
    private boolean describe(int bin, int depth) {
        if (!growth.find(levelsDb, depth) || wasAsLoudBefore(depth)) {
            return false;
        }
        growthHops = growth.hops();
        riseDb = growth.riseDb();
        growthDbPerSecond = growth.slopeDbPerHop() / hopSeconds;
        odds.describe(growthHops * hopSeconds / HOP_OF_ODDS_SECONDS, riseDb, growth.strayDb(),
            spectra.totalDb(0) - levelsDb[0], spectra.peakWanderBins(bin, Math.max(3, growthHops / 2)));
        return true;
    }

    /** The features of a growing peak, for fitting the odds; null where nothing grows. */
    double[] features(int bin) {
        int depth = look(bin);
        if (!describe(bin, depth)) {
            return null;
        }
        odds.describePartner(partnerDb(bin));
        return odds.features();
    }

    private int look(int bin) {
        int depth = spectra.depth();
        for (int i = 0; i < depth; i++) {
            levelsDb[i] = spectra.levelDb(i, bin);
        }
        return depth;
    }

    /** Two strings that beat come back to where they were; a howl has not been there before. */
    private boolean wasAsLoudBefore(int depth) {
        for (int i = growth.hops(); i < depth; i++) {
            if (levelsDb[i] > levelsDb[0] - LEAST_OVER_BEFORE_DB) {
                return true;
            }
        }
        return false;
    }

    private boolean isTurnedUp(int bin) {
        int began = growthHops - 1;
        double nowDb = (aroundDb(0, bin) + aroundDb(1, bin)) / 2;
        double thenDb = (aroundDb(began, bin) + aroundDb(began - 1, bin)) / 2;
        return growthDbPerSecond < FASTEST_HAND_DB_PER_SECOND && nowDb - thenDb > riseDb / 2;
    }

    /** Far enough away for a fast growing line not to show, wide enough to be told to a decibel. */
    private double aroundDb(int hopsAgo, int bin) {
        return spectra.surroundingsDb(hopsAgo, bin, 20, FARTHEST_AROUND);
    }

    /** Loudest line at a simple ratio that rose along, against this one. */
    private double partnerDb(int bin) {
        double peak = spectra.peakBin(0, bin);
        double loudest = HowlOdds.NO_PARTNER_DB;
        for (double ratio : PARTNER_RATIOS) {
            int partner = (int) Math.round(peak * ratio);
            if (partner >= 3 && partner < spectra.bins() - 3) {
                double levelDb = spectra.levelDb(0, partner);
                boolean isLine = levelDb - spectra.surroundingsDb(0, partner, 4, 6) > 4;
                boolean roseAlong = levelDb - spectra.levelDb(growthHops - 1, partner) > 0.35 * riseDb;
                if (isLine && roseAlong && levelDb - levelsDb[0] > FAINTEST_PARTNER_DB) {
                    loudest = Math.max(loudest, levelDb - levelsDb[0]);
                }
            }
        }
        return loudest;
    }

    private boolean hasReachedTheLimit(int bin, int depth, double loudestPlayingDb) {
        if (depth < spectra.capacity() || spectra.totalDb(0) - levelsDb[0] > LIMIT_BELOW_ALL_DB + 1.77
            || loudestPlayingDb < levelsDb[0] - 40 || spectra.totalDb(0) < loudestPlayingDb + LIMIT_OVER_PLAYING_DB) {
            return false;
        }
        double lowest = levelsDb[0];
        double highest = levelsDb[0];
        for (int i = 1; i < limitHops; i++) {
            lowest = Math.min(lowest, levelsDb[i]);
            highest = Math.max(highest, levelsDb[i]);
        }
        double secondHarmonicDb = 2 * bin < spectra.bins() - 3 ? spectra.levelDb(0, 2 * bin) - levelsDb[0] : HowlOdds.NO_PARTNER_DB;
        if (highest - lowest > LIMIT_LEVEL_RANGE_DB || secondHarmonicDb > LIMIT_SECOND_HARMONIC_DB
            || spectra.peakWanderBins(bin, limitHops) > LIMIT_WANDER_BINS) {
            return false;
        }
        return jumped(lowest);
    }

    /** Finds where the line came up; it must have been far lower within the last second. */
    private boolean jumped(double limitDb) {
        for (int i = limitHops; i < levelsDb.length; i++) {
            if (levelsDb[i] < limitDb - 25) {
                growthHops = i + 1;
                riseDb = limitDb - levelsDb[i];
                growthDbPerSecond = riseDb / hopSeconds / Math.max(1, i + 1 - limitHops);
                return true;
            }
        }
        return false;
    }
}
