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
    /** Number of the harmonic nearest to a frequency. */
    int harmonic(double hz) {
        return (int) Math.round(hz / frequencyHz);
    }

    /** How far a frequency is from the nearest harmonic. */
    double missHz(double hz) {
        return Math.abs(hz - harmonic(hz) * frequencyHz);
    }
}
