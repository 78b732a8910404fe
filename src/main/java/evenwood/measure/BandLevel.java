package evenwood.measure;

/**
 * What the long-term spectrum says of one band.
 *
 * @param band                the band
 * @param levelDbfs           plain RMS in the band while playing, steady noise taken off; −Infinity when silent
 * @param relativeDb          the same against all bands together, so that louder playing or more gain changes nothing
 * @param halfWidthDb         95 % confidence of levelDbfs, ±; +Infinity when too little was played
 * @param relativeHalfWidthDb 95 % confidence of relativeDb, ±; +Infinity when too little was played
 * @param signalToNoiseDb     level while playing, noise included, over the level in the quiet parts; +Infinity where no
 *                            noise is known
 */
public record BandLevel(ThirdOctave band, double levelDbfs, double relativeDb, double halfWidthDb, double relativeHalfWidthDb,
                        double signalToNoiseDb) {
    /**
     * Nearer to the noise than this a level is only an upper bound: at 6 dB noise makes 1.26 dB of it. Source: the
     * background correction K1 of ISO 3744 (from memory, not re-read).
     */
    public static final double LEAST_SIGNAL_TO_NOISE_DB = 6;

    public BandLevel {
        if (Double.isNaN(levelDbfs) || Double.isNaN(relativeDb) || Double.isNaN(halfWidthDb) || Double.isNaN(relativeHalfWidthDb)
            || Double.isNaN(signalToNoiseDb)) {
            throw new IllegalArgumentException("band level: " + band.nominalName() + " levelDbfs=" + levelDbfs + ", relativeDb="
                + relativeDb + ", halfWidthDb=" + halfWidthDb + ", relativeHalfWidthDb=" + relativeHalfWidthDb
                + ", signalToNoiseDb=" + signalToNoiseDb + ", but all must be numbers");
        }
    }

    /** Whether the level is of the playing and not of hum, hiss or rumble; otherwise it must not be judged. */
    public boolean isAboveNoise() {
        return signalToNoiseDb >= LEAST_SIGNAL_TO_NOISE_DB;
    }
}
