package evenwood.measure;

import java.util.Arrays;

/**
 * Follows the phase of one mains harmonic through playing that never stops, and asks which other harmonics keep step.
 *
 * <p>How: the reference's phase advance from piece to piece is smoothed, pieces where it is louder or softer than usual
 * counting less; another harmonic of the same mains turns exactly k times as fast, so turned back by that much it stands
 * still while notes, which start when the player likes, point anywhere. What stands still is found by iteratively
 * reweighted means with Cauchy weights. Source: our choice, a phase-locked mean as in synchronous averaging.
 */
final class HumLock {
    private static final int ADVANCES_AROUND = 6;
    private static final int PHASES_AROUND = 2;
    private static final double STEADY_DB = 2;
    /** Where all pieces around are disturbed, the mains is taken to turn on as it was. */
    private static final double PRIOR_WEIGHT = 0.75;
    private static final int ROUNDS = 12;
    /** Pieces that overlap by half with this window are nearly independent (3.8 %). */
    private static final double DEPENDENCE = 1.04;

    private final PieceSpectra spectra;
    private final int pieces;
    private final int reference;
    /** Phase of the fundamental in the middle of each piece, counted on. */
    private final double[] phase;
    private final double[] localHz;
    private final double frequencyHz;
    private final double sigmaHz;
    private final double steadyDb;

    /** What keeps step. @param power its mean square   @param sureness its amplitude over the error of that */
    record Kept(double power, double sureness) { }

    HumLock(PieceSpectra spectra, int reference, double aboutHz) {
        this.spectra = spectra;
        this.reference = reference;
        pieces = spectra.pieces();
        double[] re = new double[pieces];
        double[] im = new double[pieces];
        double[] weight = new double[pieces];
        readReference(reference * aboutHz, re, im);
        steadyDb = weigh(re, im, weight);
        double[] turned = follow(reference * aboutHz, re, im, weight);
        phase = new double[pieces];
        localHz = new double[pieces];
        for (int p = 0; p < pieces; p++) {
            phase[p] = turned[p] / reference;
        }
        for (int p = 0; p < pieces; p++) {
            int from = Math.max(0, p - 1);
            int to = Math.min(pieces - 1, p + 1);
            localHz[p] = (phase[to] - phase[from]) / (2 * Math.PI * seconds(from, to));
        }
        frequencyHz = (phase[pieces - 1] - phase[0]) / (2 * Math.PI * seconds(0, pieces - 1));
        sigmaHz = scatterHz(re, im, turned);
    }

    double frequencyHz() {
        return frequencyHz;
    }

    double sigmaHz() {
        return sigmaHz;
    }

    /** How much the reference's level varies among the pieces most alike; 1 dB is steady, 6 dB is anything. */
    double steadyDb() {
        return steadyDb;
    }

    /** The part of harmonic {@code k} that keeps step with the reference. */
    Kept kept(int k) {
        double[] re = new double[pieces];
        double[] im = new double[pieces];
        double[] z = new double[2];
        for (int p = 0; p < pieces; p++) {
            spectra.phasor(p, k * localHz[p], z);
            double back = k * phase[p];
            re[p] = z[0] * Math.cos(back) + z[1] * Math.sin(back);
            im[p] = z[1] * Math.cos(back) - z[0] * Math.sin(back);
        }
        return standingStill(re, im);
    }

    private void readReference(double hz, double[] re, double[] im) {
        double[] z = new double[2];
        for (int p = 0; p < pieces; p++) {
            spectra.phasor(p, hz, z);
            re[p] = z[0];
            im[p] = z[1];
        }
    }

    /** Weights by how near a piece's level is to that of the two fifths most alike; returns the width of those. */
    private double weigh(double[] re, double[] im, double[] weight) {
        double[] levels = new double[pieces];
        for (int p = 0; p < pieces; p++) {
            levels[p] = 20 * Math.log10(Math.hypot(re[p], im[p]) + 1e-15);
        }
        double[] sorted = levels.clone();
        Arrays.sort(sorted);
        int span = Math.max(2, 2 * pieces / 5);
        int best = 0;
        for (int i = 0; i + span < pieces; i++) {
            if (sorted[i + span] - sorted[i] < sorted[best + span] - sorted[best]) {
                best = i;
            }
        }
        double usual = sorted[best + span / 2];
        for (int p = 0; p < pieces; p++) {
            double off = (levels[p] - usual) / STEADY_DB;
            weight[p] = 1 / (1 + off * off);
        }
        return sorted[Math.min(pieces - 1, best + span)] - sorted[best];
    }

    /** The reference's phase, counted on over the pieces. */
    private double[] follow(double hz, double[] re, double[] im, double[] weight) {
        double[] advanceRe = new double[pieces - 1];
        double[] advanceIm = new double[pieces - 1];
        for (int p = 0; p + 1 < pieces; p++) {
            double angle = Math.atan2(im[p + 1], re[p + 1]) - Math.atan2(im[p], re[p]) - 2 * Math.PI * hz * seconds(p, p + 1);
            double w = weight[p] * weight[p + 1];
            advanceRe[p] = w * Math.cos(angle);
            advanceIm[p] = w * Math.sin(angle);
        }
        double[] turned = new double[pieces];
        for (int p = 0; p + 1 < pieces; p++) {
            turned[p + 1] = turned[p] + 2 * Math.PI * hz * seconds(p, p + 1)
                + angleAround(advanceRe, advanceIm, p, ADVANCES_AROUND);
        }
        double[] restRe = new double[pieces];
        double[] restIm = new double[pieces];
        for (int p = 0; p < pieces; p++) {
            double angle = Math.atan2(im[p], re[p]) - turned[p];
            restRe[p] = weight[p] * Math.cos(angle);
            restIm[p] = weight[p] * Math.sin(angle);
        }
        double before = 0;
        for (int p = 0; p < pieces; p++) {
            double rest = angleAround(restRe, restIm, p, PHASES_AROUND);
            before += Math.IEEEremainder(rest - before, 2 * Math.PI);
            turned[p] += before;
        }
        return turned;
    }

    private static double angleAround(double[] re, double[] im, int at, int around) {
        double x = PRIOR_WEIGHT;
        double y = 0;
        for (int p = Math.max(0, at - around); p <= Math.min(re.length - 1, at + around); p++) {
            x += re[p];
            y += im[p];
        }
        return Math.atan2(y, x);
    }

    /** Error of the mean frequency from how far the phases lie beside the followed ones. */
    private double scatterHz(double[] re, double[] im, double[] turned) {
        double[] off = new double[pieces];
        for (int p = 0; p < pieces; p++) {
            off[p] = Math.abs(Math.IEEEremainder(Math.atan2(im[p], re[p]) - turned[p], 2 * Math.PI));
        }
        Arrays.sort(off);
        double sigma = 1.5 * off[pieces / 2];
        return sigma / (Math.PI * seconds(0, pieces - 1) * reference);
    }

    private Kept standingStill(double[] re, double[] im) {
        double x = median(re);
        double y = median(im);
        double error = 0;
        for (int round = 0; round < ROUNDS; round++) {
            double[] off = new double[pieces];
            for (int p = 0; p < pieces; p++) {
                off[p] = Math.hypot(re[p] - x, im[p] - y);
            }
            double scale = Math.max(median(off), 1e-15);
            double sum = 0;
            double sumX = 0;
            double sumY = 0;
            double squares = 0;
            for (int p = 0; p < pieces; p++) {
                double w = 1 / (1 + off[p] * off[p] / (scale * scale));
                sum += w;
                sumX += w * re[p];
                sumY += w * im[p];
                squares += w * w * off[p] * off[p];
            }
            x = sumX / sum;
            y = sumY / sum;
            error = Math.sqrt(DEPENDENCE * squares) / sum;
        }
        double square = x * x + y * y;
        return new Kept(Math.max(0, square - error * error) / 2, Math.sqrt(square) / Math.max(error, 1e-15));
    }

    private double seconds(int from, int to) {
        return spectra.centreSeconds(to) - spectra.centreSeconds(from);
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
