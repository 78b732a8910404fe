package evenwood.measure;

/**
 * The test signal a box is learned with: one tone sliding up through all audible frequencies, again and again, each time 6 dB
 * louder than before.
 *
 * <p>How: exponential sine sweep, phase 2π·f₁·L·(e^(t/L) − 1), L = T/ln(f₂/f₁), so that every harmonic a box adds is the same
 * sweep begun L·ln k earlier. Source: Farina, AES 108th Convention 2000, preprint 5093 (equations from memory;
 * SweepAnalysisReferenceTest holds the answers against known filters and closed-form distortion). The pauses grow, so that
 * a recording that began late or was stopped early still says which sweep is which. Levels and lengths are our choice.
 * <p>Thread: static, no state.
 */
public final class SineSweeps {
    public static final double LOWEST_HZ = 10;
    public static final double HIGHEST_HZ = 20_000;
    public static final int COUNT = 7;
    static final double SECONDS = 4;
    private static final double QUIETEST_DBFS = -42;
    private static final double STEP_DB = 6;
    private static final double LEAD_SECONDS = 1;
    private static final double SHORTEST_PAUSE_SECONDS = 1;
    private static final double PAUSE_GROWTH_SECONDS = 0.1;
    private static final double FADE_IN_SECONDS = 0.05;
    private static final double FADE_OUT_SECONDS = 0.01;
    /** A recording of a low sample rate has no more than this share of it. */
    static final double HIGHEST_SHARE = 0.45;
    private static final double GROWTH_SECONDS = SECONDS / Math.log(HIGHEST_HZ / LOWEST_HZ);

    private SineSweeps() { }

    /** Peak of a sweep, counted from 0. */
    public static double levelDbfs(int sweep) {
        return QUIETEST_DBFS + STEP_DB * sweep;
    }

    static double startSeconds(int sweep) {
        return LEAD_SECONDS + sweep * (SECONDS + SHORTEST_PAUSE_SECONDS) + PAUSE_GROWTH_SECONDS * sweep * (sweep - 1) / 2;
    }

    /** By how much a harmonic's sweep is ahead of the first's. */
    static double leadSeconds(int harmonic) {
        return GROWTH_SECONDS * Math.log(harmonic);
    }

    public static double wholeSeconds() {
        return startSeconds(COUNT);
    }

    /** All sweeps with their pauses. */
    public static float[] samples(int sampleRateHz) {
        float[] all = new float[(int) Math.ceil(wholeSeconds() * sampleRateHz)];
        float[] one = one(sampleRateHz);
        for (int sweep = 0; sweep < COUNT; sweep++) {
            float gain = (float) Math.pow(10, levelDbfs(sweep) / 20);
            int start = (int) Math.round(startSeconds(sweep) * sampleRateHz);
            for (int i = 0; i < one.length; i++) {
                all[start + i] = gain * one[i];
            }
        }
        return all;
    }

    /** One sweep of full scale; what a low sample rate cannot hold is left out. */
    static float[] one(int sampleRateHz) {
        double seconds = Math.min(SECONDS, GROWTH_SECONDS * Math.log(HIGHEST_SHARE * sampleRateHz / LOWEST_HZ));
        float[] sweep = new float[(int) Math.round(seconds * sampleRateHz)];
        for (int i = 0; i < sweep.length; i++) {
            double t = (double) i / sampleRateHz;
            double fade = Math.min(rise(t / FADE_IN_SECONDS), rise((seconds - t) / FADE_OUT_SECONDS));
            sweep[i] = (float) (fade * Math.sin(2 * Math.PI * LOWEST_HZ * GROWTH_SECONDS * Math.expm1(t / GROWTH_SECONDS)));
        }
        return sweep;
    }

    private static double rise(double part) {
        return part >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * Math.max(0, part));
    }
}
