package evenwood.measure;

/**
 * How round the tops of the waves are, by the level they reach: a stage that runs out of room makes its tops wide and
 * flat, and only those.
 *
 * <p>In: stretches of half a hop. Out: a {@link TopTable}.
 * <p>How: a half wave is what lies between two zero crossings. Of each whose top v is at least the RMS of its stretch
 * two things are kept. <em>Slope</em>: the time w it spends above 0.9·v against the lag τ at which the stretch's own
 * autocorrelation has fallen to 0.9, as ln((2τ/w)²). In a linear chain this is 0 for a sine, and much the same (0.2 to
 * 0.4) for the high tops of any Gaussian sound whatever its spectrum, for there the wave follows its autocorrelation
 * (Slepian's model, from memory): bright hard playing does not move it. Behind a characteristic y = f(x) a top's curvature
 * over its height changes by f'(x)·x/f(x), which is the slope of the characteristic in dB per dB
 * ({@link CompressionCurve} adds it up).
 * <em>Flat</em>: the drop at a quarter of w from the middle over the drop at its ends is 1/4 for every smooth top (a
 * parabola), near 0 for a level one, and for a straight tilted one too.
 * <p>Limits: below {@value #FEWEST_TOP_FRAMES} frames of w flatness is not told. Own reasoning from the design notes of
 * the project's reference 5.5; HalfWaveShapesReferenceTest has sines, Gaussian noise and the closed form of tanh.
 * <p>Thread: one owner. Nothing here allocates but the constructor.
 */
final class HalfWaveShapes {
    private static final double TOP_PART = 0.9;
    private static final double WANTED_FALL = 2 * (1 - TOP_PART);
    /** Tops 20 dB under the highest so far are compared with by nobody: 16 dB is the deepest. */
    private static final double SKIP_BELOW = 0.1;
    /** The top of a shorter half wave lies between too few frames to have a width. */
    private static final int FEWEST_FRAMES = 4;
    private static final double FEWEST_TOP_FRAMES = 4.5;
    /** Well under the 1/4 of a smooth top. */
    private static final double FLAT_BELOW = 0.1;
    /** Every so many frames tell the autocorrelation's mean as well as all; odd, so that no pitch falls into step. */
    private static final int STRIDE = 11;
    private static final double LAG_MARGIN = 1.05;
    private static final double SILENCE_POWER = 1e-12;

    private final int stretchFrames;
    private final float[] recent;
    private final TopTable table;
    private double highest;
    private int halfWaveStart;
    private double mean;
    private double rms;
    private double lag;
    private boolean early;
    private double sumBefore;
    private double squaresBefore;

    HalfWaveShapes(int stretchFrames, TopTable table) {
        this.stretchFrames = stretchFrames;
        this.table = table;
        recent = new float[2 * stretchFrames];
        reset();
    }

    /** Hears the next stretch, which has gone through the history already. [audio thread] */
    void accept(float[] stretch, StretchHistory history) {
        System.arraycopy(recent, stretchFrames, recent, 0, stretchFrames);
        System.arraycopy(stretch, 0, recent, stretchFrames, stretchFrames);
        halfWaveStart -= stretchFrames;
        highest = Math.max(highest, history.peak());
        early = history.early();
        mean = (sumBefore + history.newestSum()) / recent.length;
        double meanSquare = (squaresBefore + history.newestSquares()) / recent.length - mean * mean;
        sumBefore = history.newestSum();
        squaresBefore = history.newestSquares();
        if (history.peak() > highest * SKIP_BELOW && meanSquare > SILENCE_POWER) {
            rms = Math.sqrt(meanSquare);
            lag = lagOfFall(meanSquare);
            cutIntoHalfWaves();
        } else {
            halfWaveStart = -1;
        }
    }

    void reset() {
        java.util.Arrays.fill(recent, 0);
        highest = 0;
        halfWaveStart = -1;
        lag = 1;
        sumBefore = 0;
        squaresBefore = 0;
    }

    private void cutIntoHalfWaves() {
        boolean upper = recent[stretchFrames - 1] > mean;
        int start = halfWaveStart;
        for (int i = stretchFrames; i < recent.length; i++) {
            boolean above = recent[i] > mean;
            if (above != upper) {
                if (start >= 0) {
                    halfWave(start, i, upper ? 1 : -1);
                }
                start = i;
                upper = above;
            }
        }
        halfWaveStart = start;
    }

    private void halfWave(int start, int end, int sign) {
        if (end - start < FEWEST_FRAMES) {
            return;
        }
        int top = sign > 0 ? highest(start, end) : lowest(start, end);
        double height = sign * (recent[top] - mean);
        if (height < rms || height < highest * SKIP_BELOW) {
            return;
        }
        double level = mean + sign * TOP_PART * height;
        double left = crossing(top, -1, start, sign, level);
        double right = crossing(top, 1, end - 1, sign, level);
        double width = Math.max(right - left, 0.5);
        boolean judged = width >= FEWEST_TOP_FRAMES;
        boolean flat = judged && Math.abs(flatness(left, width, sign) / ((1 - TOP_PART) * height)) < FLAT_BELOW;
        table.add(sign > 0, 20 * Math.log10(sign * recent[top]), early, 2 * Math.log(2 * lag / width), judged, flat);
    }

    private int highest(int start, int end) {
        int top = start;
        float best = recent[start];
        for (int i = start + 1; i < end; i++) {
            if (recent[i] > best) {
                best = recent[i];
                top = i;
            }
        }
        return top;
    }

    private int lowest(int start, int end) {
        int top = start;
        float best = recent[start];
        for (int i = start + 1; i < end; i++) {
            if (recent[i] < best) {
                best = recent[i];
                top = i;
            }
        }
        return top;
    }

    /** Where the wave leaves its top part, going one way from the top, between frames along a straight line. */
    private double crossing(int top, int step, int last, int sign, double level) {
        int i = top;
        double signedLevel = sign * level;
        while (i != last && sign * recent[i] >= signedLevel) {
            i += step;
        }
        double outside = sign * (level - recent[i]);
        return outside <= 0 ? i : i - step * outside / (outside + sign * (recent[i - step] - level));
    }

    /** Half the second difference over a quarter of the width, about its middle. */
    private double flatness(double left, double width, int sign) {
        double sides = value(left + width / 4) + value(left + 3 * width / 4);
        return sign * (2 * value(left + width / 2) - sides) / 2;
    }

    private double value(double position) {
        int i = (int) position;
        return recent[i] + (position - i) * (recent[i + 1] - recent[i]);
    }

    /**
     * In frames: from the last stretch's lag outwards in steps that widen until the fall lies between two lags not more
     * than an eighth apart; between those the autocorrelation falls as a parabola.
     */
    private double lagOfFall(double meanSquare) {
        int low = (int) (lag / LAG_MARGIN);
        int high = Math.min(stretchFrames / 2, (int) (lag * LAG_MARGIN) + 1);
        double lowFall = low == 0 ? 0 : fall(low, meanSquare);
        double highFall = fall(high, meanSquare);
        while (lowFall >= WANTED_FALL) {
            high = low;
            highFall = lowFall;
            low /= 2;
            lowFall = low == 0 ? 0 : fall(low, meanSquare);
        }
        while (highFall < WANTED_FALL && high < stretchFrames / 2) {
            low = high;
            lowFall = highFall;
            high = Math.min(stretchFrames / 2, 2 * high);
            highFall = fall(high, meanSquare);
        }
        while (high - low > 1 + low / 8) {
            int middle = (low + high) / 2;
            double middleFall = fall(middle, meanSquare);
            if (middleFall < WANTED_FALL) {
                low = middle;
                lowFall = middleFall;
            } else {
                high = middle;
                highFall = middleFall;
            }
        }
        double part = highFall <= lowFall ? 1 : Math.max(0, Math.min(1, (WANTED_FALL - lowFall) / (highFall - lowFall)));
        return Math.max(0.5, Math.sqrt((1 - part) * low * low + part * high * high));
    }

    /** 2·(1 − autocorrelation), as the mean squared difference over the lag. */
    private double fall(int lagFrames, double meanSquare) {
        double sum = 0;
        double more = 0;
        int i = lagFrames;
        for (; i + STRIDE < recent.length; i += 2 * STRIDE) {
            float one = recent[i] - recent[i - lagFrames];
            float other = recent[i + STRIDE] - recent[i + STRIDE - lagFrames];
            sum += one * one;
            more += other * other;
        }
        return (sum + more) / (2 * ((i - lagFrames) / (2 * STRIDE))) / meanSquare;
    }
}
