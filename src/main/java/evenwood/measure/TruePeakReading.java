package evenwood.measure;

/**
 * The highest point of the sound itself, also between samples.
 *
 * @param truePeakDbtp against full scale; never below the highest sample; −Infinity when silent
 */
public record TruePeakReading(double truePeakDbtp) {
    public static final TruePeakReading SILENCE = new TruePeakReading(Double.NEGATIVE_INFINITY);

    public TruePeakReading {
        if (Double.isNaN(truePeakDbtp)) {
            throw new IllegalArgumentException("true peak reading: truePeakDbtp=" + truePeakDbtp
                + ", but it must be a number (−Infinity for silence); clean the block before the meter");
        }
    }

    public boolean isSilent() {
        return truePeakDbtp == Double.NEGATIVE_INFINITY;
    }
}
