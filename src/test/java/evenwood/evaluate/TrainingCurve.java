package evenwood.evaluate;

/** Characteristics the model is fitted on, slope 1 at 0; the evaluation uses others besides ({@code evenwood.takes.Overdrive}). */
public enum TrainingCurve {
    HARD(false), TANH(false), ARCTAN(false), CUBIC(false), ALGEBRAIC(false), SHARP_KNEE(false), UPPER_HARD(true), UPPER_TANH(true), BIASED(true), UNEQUAL(true);

    private static final double BIAS = 0.35;

    private final boolean upperOnly;

    TrainingCurve(boolean upperOnly) {
        this.upperOnly = upperOnly;
    }

    /** Whether its amount is that of the upper side. */
    public boolean upperOnly() {
        return upperOnly;
    }

    public double at(double u) {
        return switch (this) {
            case HARD -> Math.max(-1, Math.min(1, u));
            case TANH -> Math.tanh(u);
            case ARCTAN -> Math.atan(u * Math.PI / 2) * 2 / Math.PI;
            case CUBIC -> Math.abs(u) < 1.5 ? u - u * u * u * 4 / 27 : Math.signum(u);
            case ALGEBRAIC -> u / Math.pow(1 + Math.pow(Math.abs(u), 2.5), 1 / 2.5);
            case SHARP_KNEE -> u / Math.pow(1 + Math.pow(Math.abs(u), 6), 1 / 6.0);
            case UPPER_HARD -> Math.min(1, u);
            case UPPER_TANH -> u > 0 ? Math.tanh(u) : u;
            case BIASED -> (Math.tanh(u + BIAS) - Math.tanh(BIAS)) / (1 - Math.tanh(BIAS) * Math.tanh(BIAS));
            case UNEQUAL -> u > 0 ? Math.tanh(u) : Math.max(-1.6, u);
        };
    }

    /** The input whose output is so many dB short. */
    public double inputWhereShort(double db) {
        double low = 1e-4;
        double high = 1e4;
        for (int i = 0; i < 100; i++) {
            double middle = Math.sqrt(low * high);
            if (20 * Math.log10(middle / at(middle)) < db) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** A fresh array: what the stage makes of a take whose hardest tenth of attacks shall be so many dB short. */
    public float[] drive(float[] x, double shortDb) {
        double gain = inputWhereShort(shortDb) / HardestPlaying.peak(x, upperOnly);
        float[] out = new float[x.length];
        for (int i = 0; i < x.length; i++) {
            out[i] = (float) (at(gain * x[i]) / gain);
        }
        return out;
    }
}
