package evenwood.measure;

/**
 * A narrow peak that stands out of the noise around it.
 *
 * @param frequencyHz its centre
 * @param sigmaHz     standard error of the centre
 * @param power       mean square of the line without the noise under it
 * @param overNoise   height of the peak over the noise density around it, a plain ratio
 */
record SpectralLine(double frequencyHz, double sigmaHz, double power, double overNoise) { }
