package evenwood.measure;

import java.util.List;

/**
 * What the mains does in a spectrum.
 *
 * @param frequencyHz   the fundamental
 * @param uncertaintyHz standard error of it
 * @param lines         the lines that are its harmonics
 */
record MainsFit(double frequencyHz, double uncertaintyHz, List<SpectralLine> lines) {
    /**
     * How far the mains may wander to either side while it is listened to; harmonic k wanders k times as far. Our choice
     * from the control bands of public grids, ±20 to ±50 mHz (reference §8.1).
     */
    static final double WANDER_HZ = 0.05;
    private static final int LAST_TO_FOLLOW = 7;

    /** Half width of what belongs to harmonic {@code k} in a spectrum. */
    double reachHz(int k, LineSpectrum spectrum) {
        return Math.min(spectrum.shape().lobeHz() + k * WANDER_HZ, frequencyHz / 4);
    }

    /** Number of the harmonic nearest to a frequency. */
    int harmonic(double hz) {
        return (int) Math.round(hz / frequencyHz);
    }

    /** How far a frequency is from the nearest harmonic. */
    double missHz(double hz) {
        return Math.abs(hz - harmonic(hz) * frequencyHz);
    }

    /** Whether a line is neither one of ours nor the skirt of a stronger one of ours. */
    boolean isStranger(SpectralLine line, LineSpectrum spectrum) {
        for (SpectralLine ours : lines) {
            double nearHz = reachHz(harmonic(ours.frequencyHz()), spectrum);
            if (ours == line || Math.abs(ours.frequencyHz() - line.frequencyHz()) < nearHz && ours.power() >= line.power()) {
                return false;
            }
        }
        return true;
    }

    /** Of the first seven harmonics, the one with most power; 1 when none of them is there. */
    int strongestLowHarmonic() {
        int best = 1;
        double most = 0;
        for (SpectralLine line : lines) {
            int k = harmonic(line.frequencyHz());
            if (k <= LAST_TO_FOLLOW && line.power() > most) {
                most = line.power();
                best = k;
            }
        }
        return best;
    }
}
