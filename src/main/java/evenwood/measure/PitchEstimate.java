package evenwood.measure;

/**
 * How high a frame of two hops sounds, and how clearly.
 *
 * <p>In: a {@link ShortTimeSpectrum}. Out: {@link #frequencyHz()}, 0 when there is no period, and {@link #clarity()}, 0
 * to 1.
 * <p>How: the autocorrelation of the windowed sound is the inverse transform of its power (here up to 6 kHz), divided by
 * that of the window (Boersma 1993); of its maxima between zero crossings the first within 0.9 of the highest is taken
 * (McLeod and Wyvill 2005). It is then made exact in the sound itself by the normalised square difference
 * n(τ) = 2·Σ x(j)x(j+τ) / Σ (x(j)² + x(j+τ)²) of the same paper, at several periods at once where they are short, with a
 * parabola through its highest point. Clarity is the height of that point.
 * What is always there ({@link BinFloor}) is left out; with hum the second, exact step is left out too.
 * <p>Limits: 30 Hz to 4 kHz. A chord reads as a low, unclear common period or none.
 * <p>Thread: one owner; {@link #estimate} never allocates.
 */
final class PitchEstimate {
    private static final double HIGHEST_PARTIAL_HZ = 6_000;
    private static final double LOWEST_PARTIAL_HZ = 25;
    private static final double HIGHEST_HZ = 4_000;
    private static final double LONGEST_LAG_IN_FRAMES = 0.4;
    private static final double NEARLY_HIGHEST = 0.9;
    private static final double LEAST_CLARITY = 0.4;
    private static final double SILENT_POWER = 1e-12;
    private static final double ABSENT = 0.003;
    /** Hum that wavers by up to 3 dB is left out too. */
    private static final float FLOOR_TWICE = 2;
    /** With more hum than this in the sound itself, its waves would pull the period. */
    private static final double LITTLE = 0.01;
    private static final double ROOTLESS_CLARITY = 0.5;
    /** Eight periods of a high note make its period eight times as exact; 12 ms are too short for vibrato to matter. */
    private static final double SEVERAL_PERIODS_SECONDS = 0.012;
    private static final int MOST_PERIODS = 8;
    private static final int MOST_MOVES = 12;
    private static final int COARSE_STRIDES = 256;

    private final Likeness likeness = new Likeness();
    private final int sampleRateHz;
    private final PowerCorrelation transform;
    private final float[] correlation;
    private final float[] windowCorrelation;
    private final float[] taper;
    private final double lagRateHz;
    private final int longestLag;
    private final float[] heard;
    private final double binsPerLagRate;
    private final BinFloor floor;
    private double totalPower;
    private double leftOutPower;
    private double frequencyHz;
    private double clarity;

    PitchEstimate(HopGrid grid) {
        sampleRateHz = grid.sampleRateHz();
        int frameFrames = 2 * grid.hopFrames();
        double binHz = (double) sampleRateHz / frameFrames;
        int bins = Math.min(grid.hopFrames(), Integer.highestOneBit((int) Math.round(HIGHEST_PARTIAL_HZ / binHz)));
        int size = 4 * bins;
        transform = new PowerCorrelation(size / 2);
        lagRateHz = size * binHz;
        longestLag = (int) (LONGEST_LAG_IN_FRAMES * size);
        windowCorrelation = new float[longestLag + 2];
        correlation = new float[longestLag + 2];
        for (int lag = 0; lag < windowCorrelation.length; lag++) {
            double part = lag / (double) size;
            // The transform is circular: the far end of the window's correlation is folded back onto the near one.
            windowCorrelation[lag] = (float) (hannCorrelation(part) + hannCorrelation(1 - part));
        }
        heard = new float[bins];
        floor = new BinFloor(grid, bins);
        binsPerLagRate = size;
        taper = new float[bins];
        for (int k = (int) Math.ceil(LOWEST_PARTIAL_HZ / binHz); k < bins; k++) {
            taper[k] = (float) Math.min(1, 2 - 2.0 * k / bins);
        }
    }

    double frequencyHz() {
        return frequencyHz;
    }

    double clarity() {
        return clarity;
    }

    void reset() {
        forget();
        floor.reset();
    }

    /** Looks at the newest frame, at what it has over what is always there. [audio thread] */
    void estimate(ShortTimeSpectrum spectrum) {
        forget();
        floor.accept(spectrum.power());
        double lag = correlate(spectrum.power(), floor.floor(), FLOOR_TWICE) ? firstHighPeak() : 0;
        if (lag > 0) {
            clarity = clarityAt(lag);
            frequencyHz = lagRateHz / lag;
            if (leftOutPower <= LITTLE * totalPower) {
                refine(spectrum.samples(), lag * sampleRateHz / lagRateHz);
            }
        }
    }

    /** Looks at what a frame has more than an earlier one: the note that came new. [audio thread] */
    void estimateNew(float[] power, float[] earlierPower) {
        forget();
        double lag = correlate(power, earlierPower, 1) ? firstHighPeak() : 0;
        if (lag > 0) {
            clarity = clarityAt(lag);
            frequencyHz = lagRateHz / lag;
        }
    }

    private void forget() {
        frequencyHz = 0;
        clarity = 0;
    }

    /** Bins the pitch rests on. */
    int bins() {
        return taper.length;
    }

    private boolean correlate(float[] power, float[] without, float times) {
        totalPower = 0;
        leftOutPower = 0;
        for (int k = 1; k < taper.length; k++) {
            float left = Math.min(power[k], times * without[k]);
            heard[k] = (power[k] - left) * taper[k];
            totalPower += heard[k];
            leftOutPower += left;
        }
        if (totalPower < SILENT_POWER) {
            return false;
        }
        float[] plain = transform.of(heard);
        for (int lag = 0; lag < correlation.length; lag++) {
            correlation[lag] = plain[lag] / (plain[0] * windowCorrelation[lag]);
        }
        return true;
    }

    private double firstHighPeak() {
        float highest = 0;
        int start = 1;
        while (start < longestLag && correlation[start] > 0) {
            start++;
        }
        start = Math.max(start, (int) (lagRateHz / HIGHEST_HZ));
        for (int lag = start; lag < longestLag; lag++) {
            highest = Math.max(highest, isPeak(lag) ? correlation[lag] : 0);
        }
        if (highest < LEAST_CLARITY) {
            return 0;
        }
        for (int lag = start; lag < longestLag; lag++) {
            if (isPeak(lag) && correlation[lag] >= NEARLY_HIGHEST * highest) {
                return lag + vertex(correlation[lag - 1], correlation[lag], correlation[lag + 1]);
            }
        }
        return 0;
    }

    private boolean isPeak(int lag) {
        return correlation[lag] > correlation[lag - 1] && correlation[lag] >= correlation[lag + 1];
    }

    /**
     * The height of the peak, but not over {@value #ROOTLESS_CLARITY} when the period is only a common multiple of those of
     * several notes: then its partials 1 and 2 are missing (a triad), or 1, 5, 7 and 11 (a fifth).
     */
    private double clarityAt(double lag) {
        double bin = binsPerLagRate / lag;
        boolean rootless = partial(bin, 1) + partial(bin, 2) < ABSENT * totalPower
            || partial(bin, 1) + partial(bin, 5) + partial(bin, 7) + partial(bin, 11) < ABSENT * totalPower;
        double height = Math.min(1, correlation[(int) Math.round(lag)]);
        return rootless ? Math.min(ROOTLESS_CLARITY, height) : height;
    }

    private double partial(double bin, int number) {
        int middle = (int) Math.round(number * bin);
        return middle < 1 || middle + 1 >= heard.length ? 0 : (double) heard[middle - 1] + heard[middle] + heard[middle + 1];
    }

    private void refine(float[] samples, double roughLag) {
        int window = samples.length / 2;
        int periods = Math.max(1, Math.min(MOST_PERIODS, (int) (SEVERAL_PERIODS_SECONDS * sampleRateHz / roughLag)));
        int lag = (int) Math.round(periods * roughLag);
        int stride = 1 + lag / COARSE_STRIDES;
        int start = (window - lag) / 2 - (stride + 1) * (MOST_MOVES + 2);
        if (start < 0) {
            return;
        }
        likeness.at(samples, start);
        lag = stride == 1 ? lag : likeness.climb(lag, stride, MOST_MOVES);
        lag = likeness.climb(lag, 1, MOST_MOVES);
        frequencyHz = periods * sampleRateHz / (lag + vertex(likeness.left(), likeness.here(), likeness.right()));
    }

    /** Where the top of the parabola through three equally spaced points lies, seen from the middle one. */
    private static double vertex(double left, double middle, double right) {
        double bend = left - 2 * middle + right;
        return bend < 0 ? Math.max(-1, Math.min(1, 0.5 * (left - right) / bend)) : 0;
    }

    /** Autocorrelation of a Hann window against its value at 0; the lag in parts of the window (Boersma 1993, eq. 8). */
    private static double hannCorrelation(double lag) {
        double angle = 2 * Math.PI * lag;
        return (1 - lag) * (2.0 / 3 + Math.cos(angle) / 3) + Math.sin(angle) / (2 * Math.PI);
    }
}
