package evenwood.measure;

/**
 * How strong the sound was, plain arithmetic against full scale.
 *
 * @param samplePeakDbfs highest sample of either sign; −Infinity when silent
 * @param rmsDbfs        average level with any offset in it; a full-scale sine reads −3.01; −Infinity when silent
 * @param dcOffset       mean of the samples, as a part of full scale; 0 when nothing was heard
 * @param frames         how much was heard
 */
public record LevelReading(double samplePeakDbfs, double rmsDbfs, double dcOffset, long frames) {
    public static final LevelReading SILENCE =
        new LevelReading(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, 0, 0);

    public LevelReading {
        if (Double.isNaN(samplePeakDbfs) || Double.isNaN(rmsDbfs) || !Double.isFinite(dcOffset)) {
            throw new IllegalArgumentException("level reading: samplePeakDbfs=" + samplePeakDbfs + ", rmsDbfs=" + rmsDbfs
                + ", dcOffset=" + dcOffset + ", but all must be numbers (−Infinity for silence); clean the block before the meter");
        }
    }

    public boolean isSilent() {
        return samplePeakDbfs == Double.NEGATIVE_INFINITY;
    }

    /** How far the highest sample stands above the average: 3.01 for a sine; 0 when silent. */
    public double crestFactorDb() {
        return isSilent() ? 0 : samplePeakDbfs - rmsDbfs;
    }
}
