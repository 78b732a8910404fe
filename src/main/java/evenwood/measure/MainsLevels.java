package evenwood.measure;

import java.util.List;

/**
 * How much power the mains harmonics carry.
 *
 * <p>How: what is in each harmonic's place beyond the noise around it. Each of harmonics 1 to 5 counts when it is above
 * three standard errors; the many higher ones are added up whole, so that what hides singly is still counted, and count
 * when their sum is above four. Source: our choice of certainty.
 *
 * @param hum  mean square of harmonics 1 to 5
 * @param buzz mean square of harmonics from 6 up to the end of the spectrum
 */
record MainsLevels(double hum, double buzz) {
    static final MainsLevels NONE = new MainsLevels(0, 0);
    private static final int LAST_HUM_HARMONIC = 5;
    private static final double SURE_ONE = 3;
    private static final double SURE_SUM = 4;

    /** @param lines all lines of the spectrum: the place of one that is not the mains's is left out */
    static MainsLevels of(LineSpectrum spectrum, MainsFit mains, List<SpectralLine> lines) {
        double f = mains.frequencyHz();
        double hum = 0;
        double buzz = 0;
        double buzzVariance = 0;
        for (int k = 1; (k + 0.5) * f < spectrum.topHz(); k++) {
            double half = mains.reachHz(k, spectrum);
            double power = spectrum.excessPower(k * f, half);
            double error = spectrum.excessError(k * f, half);
            if (k <= LAST_HUM_HARMONIC) {
                hum += power > SURE_ONE * error ? power : 0;
            } else if (!strangerNear(k * f, half, mains, lines, spectrum)) {
                buzz += power;
                buzzVariance += error * error;
            }
        }
        return new MainsLevels(hum, buzz > SURE_SUM * Math.sqrt(buzzVariance) ? buzz : 0);
    }

    private static boolean strangerNear(double hz, double withinHz, MainsFit mains, List<SpectralLine> lines,
                                        LineSpectrum spectrum) {
        for (SpectralLine line : lines) {
            if (Math.abs(line.frequencyHz() - hz) < 2 * withinHz && mains.isStranger(line, spectrum)) {
                return true;
            }
        }
        return false;
    }
}
