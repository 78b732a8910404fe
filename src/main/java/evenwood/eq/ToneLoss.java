package evenwood.eq;

import evenwood.measure.ToneDifference;

/**
 * How far a tone is from the wanted one, as one number in decibels, and what of it an equaliser would leave.
 *
 * <p>How: the weighted root of the mean square over the bands of the {@link LikelyTone}, with the level free: what leaves least of
 * the likeliest difference leaves least to be expected. Within the tolerance a difference counts a third of its square; outside, the
 * part beyond the tolerance counts as well. A band weighs what it means to the instrument and the ear; of one that nobody knows
 * anything about it is not asked. Source: our choice. With no tolerance it is the plain weighted RMS.
 */
final class ToneLoss {
    /** Share of the square that counts within the tolerance: enough to aim for its middle, too little to move for it. */
    private static final double INSIDE = 0.5;
    private static final double FAR_OFF_DB = 1.5;
    private static final int QUICK_STEPS = 12;
    private static final double LEAST_CURVE = 0.2;
    private static final int LEVEL_STEPS = 60;
    private static final double LEVEL_EXACT_DB = 1e-6;

    private final double[] heard;
    private final LikelyTone likely;
    private final double[] difference;
    private final double[] tolerance;
    private final double[] weight;

    ToneLoss(ToneDifference whole) {
        int n = whole.bands().size();
        likely = new LikelyTone(whole);
        difference = likely.meanDb();
        heard = new double[n];
        tolerance = new double[n];
        weight = new double[n];
        double sum = 0;
        for (int i = 0; i < n; i++) {
            ToneDifference.Band band = whole.bands().get(i);
            heard[i] = band.differenceDb();
            tolerance[i] = band.toleranceDb();
            weight[i] = Double.isFinite(band.uncertaintyDb()) ? band.weight() * EarWeight.of(band.band()) : 0;
            sum += weight[i];
        }
        for (int i = 0; i < n && sum > 0; i++) {
            weight[i] /= sum;
        }
    }

    int bands() {
        return weight.length;
    }

    /** Shares of the whole, 1 together; all 0 when nothing is known. */
    double weight(int band) {
        return weight[band];
    }

    boolean isOutside(int band, double leftDb) {
        return Math.abs(leftDb) > tolerance[band];
    }

    /** Root mean square in dB of what an equaliser's effect would leave. */
    double db(double[] effect) {
        return Math.sqrt(square(effect));
    }

    double square(double[] effect) {
        double level = levelDb(effect);
        double sum = 0;
        for (int i = 0; i < weight.length; i++) {
            double left = difference[i] + effect[i] - level;
            double beyond = Math.max(0, Math.abs(left) - tolerance[i]);
            sum += weight[i] * (beyond * beyond + INSIDE * left * left);
        }
        return sum / (1 + INSIDE);
    }

    /** Nearly {@link #square} of two effects together, for a first look: with the mean as level. */
    double roughSquare(double[] one, double[] other) {
        double level = 0;
        for (int i = 0; i < weight.length; i++) {
            level += weight[i] * (difference[i] + one[i] + other[i]);
        }
        double sum = 0;
        for (int i = 0; i < weight.length; i++) {
            double left = difference[i] + one[i] + other[i] - level;
            double beyond = Math.max(0, Math.abs(left) - tolerance[i]);
            sum += weight[i] * (beyond * beyond + INSIDE * left * left);
        }
        return sum / (1 + INSIDE);
    }

    /** What would be left of the likeliest difference in each band, the common level taken off. */
    double[] left(double[] effect) {
        return left(difference, effect);
    }

    /** The same of the difference as it was heard. */
    double[] heardLeft(double[] effect) {
        return left(heard, effect);
    }

    LikelyTone likely() {
        return likely;
    }

    private double[] left(double[] from, double[] effect) {
        double level = levelDb(effect);
        double[] left = new double[weight.length];
        for (int i = 0; i < left.length; i++) {
            left[i] = from[i] + effect[i] - level;
        }
        return left;
    }

    /** Residuals for a least-squares optimiser, two a band; the sum of their squares is the loss. */
    void residuals(double[] effect, double[] into) {
        double level = levelDb(effect);
        for (int i = 0; i < weight.length; i++) {
            double left = difference[i] + effect[i] - level;
            double root = Math.sqrt(weight[i] / (1 + INSIDE));
            into[2 * i] = root * Math.signum(left) * Math.max(0, Math.abs(left) - tolerance[i]);
            into[2 * i + 1] = root * Math.sqrt(INSIDE) * left;
        }
    }

    /**
     * The level that most bands share: far-off bands pull with a bounded force only, so that bumps do not make a fault of what
     * lies between them: Huber's estimate of location, by Newton's method with steps that cannot overshoot for ever.
     */
    double levelDb(double[] effect) {
        double level = 0;
        for (int step = 0; step < LEVEL_STEPS; step++) {
            double slope = 0;
            double curve = 0;
            for (int i = 0; i < weight.length; i++) {
                double left = difference[i] + effect[i] - level;
                double pull = Math.max(-FAR_OFF_DB, Math.min(FAR_OFF_DB, left));
                slope += weight[i] * pull;
                curve += pull == left ? weight[i] : 0;
            }
            if (Math.abs(slope) < LEVEL_EXACT_DB) {
                break;
            }
            level += slope / Math.max(curve, step < QUICK_STEPS ? LEAST_CURVE : 1);
        }
        return level;
    }
}
