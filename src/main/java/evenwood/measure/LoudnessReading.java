package evenwood.measure;

/**
 * How loud a take is to the ear. Levels are −Infinity for silence and before their window is full.
 *
 * @param momentaryLufs    the last 400 ms
 * @param maxMomentaryLufs the loudest 400 ms so far
 * @param shortTermLufs    the last 3 s
 * @param maxShortTermLufs the loudest 3 s so far
 * @param integratedLufs   the whole take without its pauses
 * @param rangeLu          from the soft to the loud passages; 0 until 3 s above −70 LUFS were heard
 * @param rangeStable      whether the range has settled: a minute was heard (EBU Tech 3342)
 */
public record LoudnessReading(double momentaryLufs, double maxMomentaryLufs, double shortTermLufs,
                              double maxShortTermLufs, double integratedLufs, double rangeLu, boolean rangeStable) {
    public static final LoudnessReading SILENCE = new LoudnessReading(Double.NEGATIVE_INFINITY,
        Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, 0, false);

    public LoudnessReading {
        if (Double.isNaN(momentaryLufs + maxMomentaryLufs + shortTermLufs + maxShortTermLufs + integratedLufs)
            || !(rangeLu >= 0)) {
            throw new IllegalArgumentException("loudness reading: momentaryLufs=" + momentaryLufs + ", maxMomentaryLufs="
                + maxMomentaryLufs + ", shortTermLufs=" + shortTermLufs + ", maxShortTermLufs=" + maxShortTermLufs
                + ", integratedLufs=" + integratedLufs + ", rangeLu=" + rangeLu
                + ", but all must be numbers (−Infinity for silence); clean the block before the meter");
        }
    }

    /** Nothing above −70 LUFS was heard for 400 ms. */
    public boolean isSilent() {
        return integratedLufs == Double.NEGATIVE_INFINITY;
    }
}
