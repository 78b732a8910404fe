package evenwood.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds the mains among lines, by the family of harmonics it makes, and tells 50 Hz from 60 Hz.
 *
 * <p>How: each line as each low harmonic of a fundamental within 1 % of 50 or 60 Hz is a guess; lines that agree with
 * it within their errors join and sharpen it (weighted least squares); the guess with most in its favour wins. It counts
 * only when the fundamental itself stands out, or two low harmonics agree whose common divisor is 1 or 2 (a rectifier
 * makes only even ones): a single line at 100, 120, 150 … Hz, or 300 with 600 Hz, may be anything. A higher line far
 * above its neighbours in the family (1 kHz from a computer link) is not the mains's.
 * Source: ±1 % is the 10 s band of EN 50160 (reference §8.1).
 */
final class MainsFinder {
    private static final double[] FAMILIES_HZ = {50, 60};
    private static final double WINDOW = 0.01;
    private static final int SEED_HARMONICS = 16;
    /** Twelve: the harmonics that every source of hum fills (reference §8.2). */
    private static final int LOW_HARMONICS = 12;
    private static final double SIGMAS = 4;
    /** Keeps many high harmonics that have wandered from outvoting the low ones. */
    private static final double WANDER_SIGMA_HZ = 0.005;
    /** A line cannot win by height alone: about 26 dB over the noise is as sure as any. */
    private static final double MOST_PER_LINE = 6;
    private static final double CLEAR_WIN = 1.3;
    /** Harmonics up to this one may stand alone; above, neighbours are never more than 9 dB away (reference §8.2). */
    private static final int MAY_STAND_ALONE = 6;
    static final int NEIGHBOURS = 4;
    static final double MOST_OVER_NEIGHBOURS = 8;

    private final List<SpectralLine> lines;

    MainsFinder(List<SpectralLine> lines) {
        this.lines = lines;
    }

    Optional<MainsFit> find() {
        Guess[] best = new Guess[FAMILIES_HZ.length];
        for (int f = 0; f < FAMILIES_HZ.length; f++) {
            best[f] = bestOf(FAMILIES_HZ[f]);
        }
        Guess winner = best[0].score >= best[1].score ? best[0] : best[1];
        Guess other = winner == best[0] ? best[1] : best[0];
        if (winner.score < CLEAR_WIN * other.score || winner.score == 0) {
            return Optional.empty();
        }
        return Optional.of(new MainsFit(winner.frequencyHz, winner.sigmaHz, List.copyOf(winner.joined)));
    }

    private Guess bestOf(double familyHz) {
        Guess best = new Guess();
        for (SpectralLine line : lines) {
            for (int k = 1; k <= SEED_HARMONICS; k++) {
                double seedHz = line.frequencyHz() / k;
                if (Math.abs(seedHz - familyHz) <= WINDOW * familyHz) {
                    Guess guess = new Guess();
                    guess.grow(seedHz, line.sigmaHz() / k);
                    if (guess.believable() && guess.score > best.score
                        && Math.abs(guess.frequencyHz - familyHz) <= WINDOW * familyHz) {
                        best = guess;
                    }
                }
            }
        }
        return best;
    }

    /** A fundamental and the lines that agree with it. */
    private final class Guess {
        private static final int ROUNDS = 3;

        private final List<SpectralLine> joined = new ArrayList<>();
        private double frequencyHz;
        private double sigmaHz;
        private double score;

        void grow(double seedHz, double seedSigmaHz) {
            frequencyHz = seedHz;
            sigmaHz = seedSigmaHz;
            for (int round = 0; round < ROUNDS; round++) {
                join();
                sharpen();
            }
        }

        boolean believable() {
            int low = 0;
            int divisor = 0;
            for (SpectralLine line : joined) {
                int k = harmonic(line);
                if (k == 1) {
                    return true;
                }
                if (k <= LOW_HARMONICS) {
                    low++;
                    divisor = gcd(divisor, k);
                }
            }
            return low >= 2 && divisor <= 2;
        }

        private void join() {
            joined.clear();
            for (SpectralLine line : lines) {
                int k = harmonic(line);
                double allowedHz = SIGMAS * Math.hypot(line.sigmaHz(), k * sigmaHz) + k * MainsFit.WANDER_HZ / 2;
                if (k >= 1 && Math.abs(line.frequencyHz() - k * frequencyHz) <= Math.min(allowedHz, 0.1 * frequencyHz)) {
                    joined.add(line);
                }
            }
            joined.removeIf(line -> !hasFamily(line));
        }

        private boolean hasFamily(SpectralLine line) {
            int k = harmonic(line);
            if (k <= MAY_STAND_ALONE) {
                return true;
            }
            for (SpectralLine other : joined) {
                int distance = Math.abs(harmonic(other) - k);
                if (distance > 0 && distance <= NEIGHBOURS && other.power() * MOST_OVER_NEIGHBOURS >= line.power()) {
                    return true;
                }
            }
            return false;
        }

        private void sharpen() {
            double weights = 0;
            double weighted = 0;
            double scatter = 0;
            score = 0;
            for (SpectralLine line : joined) {
                int k = harmonic(line);
                double missHz = line.frequencyHz() - k * frequencyHz;
                double sigma = Math.hypot(line.sigmaHz(), k * WANDER_SIGMA_HZ);
                double weight = 1 / (sigma * sigma);
                weights += weight * k * k;
                weighted += weight * k * line.frequencyHz();
                scatter += weight * missHz * missHz;
                score += Math.min(Math.log(line.overNoise()), MOST_PER_LINE) / Math.sqrt(Math.max(1, k / 4.0));
            }
            if (weights > 0) {
                frequencyHz = weighted / weights;
                sigmaHz = Math.sqrt(Math.max(1, scatter / joined.size()) / weights);
            }
        }

        private int harmonic(SpectralLine line) {
            return (int) Math.round(line.frequencyHz() / frequencyHz);
        }
    }

    private static int gcd(int a, int b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
