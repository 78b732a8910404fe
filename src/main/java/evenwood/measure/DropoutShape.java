package evenwood.measure;

/**
 * Looks closely at a suspected hole: was the sound alive right up to both edges?
 *
 * <p>How: on both sides, over 5 ms, the sound must be loud enough, finer than its coarsest step, moving, and still moving
 * in the last half millisecond before the edge or jump at it, which a note dying into digital silence is not. A run at the top of its
 * neighbourhood that is entered and left gently is a clipped top; one that a coarse converter explains is a quiet low note.
 * A repeat must be spliced: the curvature at its edges stands out, which in a periodic tone it does not. Source: our choice.
 */
final class DropoutShape {
    private static final double AROUND_SECONDS = 0.005;
    private static final double EDGE_SECONDS = 0.000_5;
    private static final double CURVE_SECONDS = 0.001;
    private static final double LEAST_RMS = Math.pow(10, -66 / 20.0);
    private static final double LEAST_STEPS = 8;
    private static final double COARSE_STEPS = 2.5;
    private static final int COARSE_FRAMES = 4;
    private static final double MOST_STILL_SHARE = 0.25;
    private static final double CLEAR_EDGE_MOTION = 0.1;
    private static final double LEAST_SHARPNESS = 0.3;
    private static final double CLEAR_EDGE_STEP = 2;
    private static final double MOST_LEVEL_RATIO = 10;
    private static final double GENTLE = 1.5;
    private static final double CLEAR_SPLICE = 8;
    private static final double BOTH_SPLICES = 64;

    private final int around;
    private final int edge;
    private final int curve;
    private final RecentSound recent;

    DropoutShape(int sampleRateHz, RecentSound recent) {
        this.recent = recent;
        around = (int) Math.max(16, Math.round(AROUND_SECONDS * sampleRateHz));
        edge = (int) Math.max(4, Math.round(EDGE_SECONDS * sampleRateHz));
        curve = (int) Math.max(8, Math.round(CURVE_SECONDS * sampleRateHz));
    }

    int framesNeededAfter() {
        return around + 2;
    }

    /** Whether the equal samples from {@code start} up to {@code end} are a hole. */
    boolean isHole(long start, long end) {
        if (start - around < recent.firstFrame() || start == 0) {
            return false;
        }
        double before = rms(start - around, start);
        double after = rms(end, end + around);
        return before > LEAST_RMS && after > LEAST_RMS
            && before < MOST_LEVEL_RATIO * after && after < MOST_LEVEL_RATIO * before
            && isAlive(start - around, start, before) && isAlive(end + 1, end + around, after)
            && edgesAreSharp(start, end)
            && !isCoarseTop(start, end)
            && !isClippedTop(start, end);
    }

    /** Whether the repeated frames from {@code start} up to {@code end} are spliced in. */
    boolean isRepeat(long start, long end) {
        if (start - around < recent.firstFrame()) {
            return false;
        }
        double level = rms(start, end);
        double in = splice(start);
        double out = splice(end);
        return level > LEAST_RMS && level > 2 * LEAST_STEPS * finestStep(start, end)
            && Math.max(in, out) > CLEAR_SPLICE && in * out > BOTH_SPLICES;
    }

    /**
     * Whether the sound glides onto the held value and off it again, a step of a coarse converter at a time, as the tops of low
     * quiet notes do in 16 bits. A hole is left with a jump or a slope at one edge at least.
     */
    private boolean isCoarseTop(long start, long end) {
        double held = recent.get(start);
        double reach = COARSE_STEPS * Math.max(finestStep(start - around, start), finestStep(end + 1, end + around));
        int near = (int) Math.max(COARSE_FRAMES, Math.min(edge, (end - start) / 6));
        for (int i = 1; i <= near; i++) {
            if (Math.abs(recent.get(start - i) - held) > reach || Math.abs(recent.get(end - 1 + i) - held) > reach) {
                return false;
            }
        }
        return true;
    }

    /** One edge must be clear; by chance the sound may just have stood still at the other. */
    private boolean edgesAreSharp(long start, long end) {
        double in = sharpness(step(start), motion(start - edge, start), motion(start - around, start));
        double out = sharpness(step(end), motion(end + 1, end + edge), motion(end + 1, end + around));
        return Math.max(in, out) > 1 && Math.min(in, out) > LEAST_SHARPNESS;
    }

    private static double sharpness(double step, double motionAtEdge, double motion) {
        return Math.max(motionAtEdge / (CLEAR_EDGE_MOTION * motion), step / (CLEAR_EDGE_STEP * motion));
    }

    private boolean isAlive(long from, long to, double level) {
        int still = 0;
        for (long i = from; i < to; i++) {
            still += step(i) == 0 ? 1 : 0;
        }
        return still < MOST_STILL_SHARE * (to - from) && level > LEAST_STEPS * finestStep(from, to);
    }

    private boolean isClippedTop(long start, long end) {
        float top = recent.get(start);
        for (long i = start - around; i < end + around; i++) {
            if (top > 0 ? recent.get(i) > top : recent.get(i) < top) {
                return false;
            }
        }
        return top != 0 && step(end) < GENTLE * largestStep(end + 1, end + edge);
    }

    /** Curvature where a splice would show, over the usual curvature before it. */
    private double splice(long frame) {
        double usual = 0;
        for (long i = frame - curve; i < frame - 1; i++) {
            usual += Math.abs(curvature(i));
        }
        usual /= curve - 1;
        double here = Math.max(Math.abs(curvature(frame - 1)), Math.abs(curvature(frame)));
        return usual > 0 ? here / usual : 0;
    }

    private double curvature(long frame) {
        return recent.get(frame + 1) - 2.0 * recent.get(frame) + recent.get(frame - 1);
    }

    private double rms(long from, long to) {
        double sum = 0;
        double squares = 0;
        for (long i = from; i < to; i++) {
            sum += recent.get(i);
            squares += recent.get(i) * (double) recent.get(i);
        }
        double mean = sum / (to - from);
        return Math.sqrt(Math.max(0, squares / (to - from) - mean * mean));
    }

    private double motion(long from, long to) {
        double sum = 0;
        for (long i = from; i < to; i++) {
            sum += step(i);
        }
        return sum / (to - from);
    }

    private double step(long frame) {
        return Math.abs(recent.get(frame) - recent.get(frame - 1));
    }

    private double largestStep(long from, long to) {
        double most = 0;
        for (long i = from; i < to; i++) {
            most = Math.max(most, step(i));
        }
        return most;
    }

    private double finestStep(long from, long to) {
        double finest = Double.MAX_VALUE;
        for (long i = from; i < to; i++) {
            double step = step(i);
            if (step > 0) {
                finest = Math.min(finest, step);
            }
        }
        return finest == Double.MAX_VALUE ? 0 : finest;
    }
}
