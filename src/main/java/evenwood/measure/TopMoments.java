package evenwood.measure;

/**
 * How much of a stretch's fine ripple and of its power lies near the tops of the wave, on either side.
 *
 * <p>In: stretches of half a hop. Out, in nepers: <em>ripple</em>, ln(Σy²e²/Σy² ÷ mean e²) over the frames of one side, e the
 * second difference over {@value #LAG_SECONDS} s, y the wave itself; <em>peakedness</em>, ln(Σy⁴ of one side ÷ frames ÷
 * mean square²). And how strong e is, and the same over four times the lag, in dB against the wave.
 * <p>How: a stage that runs out of room makes a small fast wave smaller while the large slow one it rides on is near the
 * limit, and only then; intermodulation meters measure just that (SMPTE RP 120, from memory). Behind y = f(x) the ripple's
 * power changes there by f'(x)². In a linear chain neither number knows the level ({@link LevelTrend}); brighter playing
 * has more ripple everywhere, which cancels.
 * <p>Limits: noise is ripple too and hides it. Every {@value #LAG_SECONDS} s one frame is taken: e has little above that.
 * <p>Thread: one owner. Nothing here allocates but the constructor.
 */
final class TopMoments {
    private static final double LAG_SECONDS = 2 / 48_000.0;
    private static final int FAR = 4;
    private static final double FLOOR = 1e-18;

    private final int lag;
    private double upperSquares;
    private double lowerSquares;
    private double upperFourths;
    private double lowerFourths;
    private double upperRipple;
    private double lowerRipple;
    private double fine;
    private double middle;
    private double frames;

    TopMoments(double sampleRateHz) {
        lag = Math.max(1, (int) Math.round(LAG_SECONDS * sampleRateHz));
    }

    /** [audio thread] */
    void accept(float[] stretch, double offset) {
        clear();
        int far = FAR * lag;
        float mean = (float) offset;
        for (int i = far; i + far < stretch.length; i += lag) {
            float y = stretch[i] - mean;
            float e = stretch[i - lag] - 2 * stretch[i] + stretch[i + lag];
            float m = stretch[i - far] - 2 * stretch[i] + stretch[i + far];
            float square = y * y;
            float power = e * e;
            fine += power;
            middle += m * m;
            frames++;
            if (y > 0) {
                upperSquares += square;
                upperFourths += square * square;
                upperRipple += square * power;
            } else {
                lowerSquares += square;
                lowerFourths += square * square;
                lowerRipple += square * power;
            }
        }
    }

    double ripple(boolean upper) {
        double squares = upper ? upperSquares : lowerSquares;
        double product = upper ? upperRipple : lowerRipple;
        return Math.log((product + FLOOR * FLOOR) / (squares + FLOOR) * frames / (fine + FLOOR));
    }

    double peakedness(boolean upper) {
        double squares = upperSquares + lowerSquares + FLOOR;
        return Math.log(((upper ? upperFourths : lowerFourths) + FLOOR * FLOOR) / squares * frames / squares);
    }

    double fineDb() {
        return 10 * Math.log10((fine + FLOOR) / (upperSquares + lowerSquares + FLOOR));
    }

    double middleDb() {
        return 10 * Math.log10((middle + FLOOR) / (upperSquares + lowerSquares + FLOOR));
    }

    private void clear() {
        upperSquares = 0;
        lowerSquares = 0;
        upperFourths = 0;
        lowerFourths = 0;
        upperRipple = 0;
        lowerRipple = 0;
        fine = 0;
        middle = 0;
        frames = 0;
    }
}
