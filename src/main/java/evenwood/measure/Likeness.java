package evenwood.measure;

/**
 * How like a stretch of sound is to the same sound some samples later, and the lag nearby where it is likest.
 *
 * <p>How: the normalised square difference n(τ) = 2·Σ x(j)x(j+τ) / Σ (x(j)² + x(j+τ)²) over half a frame. Source: McLeod
 * and Wyvill, ICMC 2005.
 * <p>Thread: one owner; never allocates.
 */
final class Likeness {
    private float[] x;
    private int start;
    private int window;
    private double energyHere;
    private double left;
    private double here;
    private double right;

    /** Chooses the sound: half of the frame, from {@code start} on. */
    void at(float[] frame, int start) {
        x = frame;
        this.start = start;
        window = frame.length / 2;
        energyHere = product(0);
    }

    /** The nearest lag that is likelier than those a stride away; {@code mostMoves} strides off at most. */
    int climb(int from, int stride, int mostMoves) {
        int lag = from;
        left = of(lag - stride);
        here = of(lag);
        right = of(lag + stride);
        for (int moves = 0; moves < mostMoves && (left > here || right > here); moves++) {
            if (right > left) {
                lag += stride;
                left = here;
                here = right;
                right = of(lag + stride);
            } else {
                lag -= stride;
                right = here;
                here = left;
                left = of(lag - stride);
            }
        }
        return lag;
    }

    double left() {
        return left;
    }

    double here() {
        return here;
    }

    double right() {
        return right;
    }

    private double of(int lag) {
        double energy = energyHere + energy(lag);
        return energy <= 0 ? 0 : 2 * product(lag) / energy;
    }

    private double product(int lag) {
        float sum0 = 0;
        float sum1 = 0;
        float sum2 = 0;
        float sum3 = 0;
        for (int j = start; j < start + window; j += 4) {
            sum0 += x[j] * x[j + lag];
            sum1 += x[j + 1] * x[j + lag + 1];
            sum2 += x[j + 2] * x[j + lag + 2];
            sum3 += x[j + 3] * x[j + lag + 3];
        }
        return (double) sum0 + sum1 + sum2 + sum3;
    }

    private double energy(int lag) {
        float sum0 = 0;
        float sum1 = 0;
        float sum2 = 0;
        float sum3 = 0;
        for (int j = start + lag; j < start + lag + window; j += 4) {
            sum0 += x[j] * x[j];
            sum1 += x[j + 1] * x[j + 1];
            sum2 += x[j + 2] * x[j + 2];
            sum3 += x[j + 3] * x[j + 3];
        }
        return (double) sum0 + sum1 + sum2 + sum3;
    }
}
