package evenwood.measure;

import java.util.Arrays;
import java.util.Optional;

/**
 * The mains found through playing that never stops.
 *
 * <p>How: each low harmonic of 50 and of 60 Hz is tried as the reference of a {@link HumLock}. What makes it the mains is
 * that other low harmonics keep step with it (with the common divisor 1 or 2, as for {@link MainsFinder}), or that the
 * fundamental itself is so steady that nobody can have played it. Source: our choice; the sureness asked for is meant
 * as that of one false harmonic in a few thousand takes; NoiseEvaluation counts on far fewer clean ones.
 *
 * @param frequencyHz the fundamental, mean over the pieces
 * @param sigmaHz     standard error of it
 * @param levels      what keeps step
 */
record LockedMains(double frequencyHz, double sigmaHz, MainsLevels levels) {
    private static final double[] FAMILIES_HZ = {50, 60};
    private static final double WINDOW = 0.01;
    private static final int MOST_REFERENCE = 8;
    private static final int LOW_HARMONICS = 12;
    private static final int LAST_HUM_HARMONIC = 5;
    private static final double SURE = 5;
    private static final double SURE_ENOUGH_TO_COUNT = 4;
    private static final double STEADY_DB = 1.5;
    private static final double STEADY_SURE = 20;
    private static final double CLEAR_WIN = 1.3;
    private static final double LOW_SHARE = 0.15;

    /** Looks for the mains; empty when nothing keeps step or 50 and 60 Hz cannot be told apart. */
    static Optional<LockedMains> search(PieceSpectra spectra, double topHz) {
        Guess best = null;
        Guess other = null;
        for (double familyHz : FAMILIES_HZ) {
            Guess ofFamily = null;
            for (int r = 1; r <= MOST_REFERENCE; r++) {
                Guess guess = guess(spectra, r, steadiestHz(spectra, r, familyHz) / r, familyHz);
                if (ofFamily == null || guess.score > ofFamily.score) {
                    ofFamily = guess;
                }
            }
            if (best == null || ofFamily.score > best.score) {
                other = best;
                best = ofFamily;
            } else {
                other = ofFamily;
            }
        }
        if (best.score == 0 || best.score < CLEAR_WIN * other.score) {
            return Optional.empty();
        }
        return Optional.of(new LockedMains(best.lock.frequencyHz(), best.lock.sigmaHz(), levels(best.lock, topHz)));
    }

    private record Guess(HumLock lock, double score) { }

    private static Guess guess(PieceSpectra spectra, int reference, double aboutHz, double familyHz) {
        HumLock lock = new HumLock(spectra, reference, aboutHz);
        int divisor = reference;
        double score = 0;
        for (int k = 1; k <= LOW_HARMONICS; k++) {
            double sureness = lock.kept(k).sureness();
            if (k != reference && sureness > SURE) {
                divisor = gcd(divisor, k);
                score += Math.log(sureness);
            }
        }
        boolean keepsStep = score > 0 && divisor <= 2;
        boolean steady = reference == 1 && lock.steadyDb() < STEADY_DB && lock.kept(1).sureness() > STEADY_SURE;
        boolean inWindow = Math.abs(lock.frequencyHz() - familyHz) <= WINDOW * familyHz;
        if (!inWindow || !keepsStep && !steady) {
            return new Guess(lock, 0);
        }
        return new Guess(lock, score + Math.log(lock.kept(reference).sureness()));
    }

    private static MainsLevels levels(HumLock lock, double topHz) {
        double hum = 0;
        double buzz = 0;
        for (int k = 1; (k + 0.5) * lock.frequencyHz() < topHz; k++) {
            HumLock.Kept kept = lock.kept(k);
            if (kept.sureness() > SURE_ENOUGH_TO_COUNT) {
                hum += k <= LAST_HUM_HARMONIC ? kept.power() : 0;
                buzz += k > LAST_HUM_HARMONIC ? kept.power() : 0;
            }
        }
        return new MainsLevels(hum, buzz);
    }

    /** Where within the window of harmonic {@code k} the most power is always there. */
    private static double steadiestHz(PieceSpectra spectra, int k, double familyHz) {
        int from = (int) Math.floor(k * familyHz * (1 - WINDOW) / spectra.binHz());
        int to = (int) Math.ceil(k * familyHz * (1 + WINDOW) / spectra.binHz());
        double bestHz = k * familyHz;
        double best = 0;
        double[] powers = new double[spectra.pieces()];
        for (int bin = from; bin <= to; bin++) {
            for (int p = 0; p < powers.length; p++) {
                powers[p] = spectra.power(p, bin);
            }
            Arrays.sort(powers);
            double always = powers[(int) (LOW_SHARE * powers.length)];
            if (always > best) {
                best = always;
                bestHz = Math.max(k * familyHz * (1 - WINDOW), Math.min(k * familyHz * (1 + WINDOW), bin * spectra.binHz()));
            }
        }
        return bestHz;
    }

    private static int gcd(int a, int b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
