package evenwood.measure;

import evenwood.sound.AudioBlock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;

/** A noise of known parts, sample by sample, and what a meter should say of it. */
final class NoiseMixture {
    /** Mains waveforms of reference §8.2: amplitude of harmonic k over the strongest, 0 where it has none. */
    enum Family {
        MAGNETIC {
            @Override double amplitude(int k) {
                return k == 1 ? 1 : k == 3 ? 0.05 : 0;
            }
        },
        RECTIFIER {
            /** |sin|: harmonics 2m fall as 3/(4m²−1) against the first of them. */
            @Override double amplitude(int k) {
                int m = k / 2;
                return k % 2 == 0 ? 3.0 / (4.0 * m * m - 1) : 0;
            }
        },
        DIMMER {
            /** Sine conducting from 90° to 180° of each half cycle; Fourier integrals of the waveform. */
            @Override double amplitude(int k) {
                return fourier(k, x -> Math.abs(Math.sin(x)) > 0 && (x % Math.PI) > Math.PI / 2 ? Math.sin(x) : 0)
                    / fourier(1, x -> (x % Math.PI) > Math.PI / 2 ? Math.sin(x) : 0);
            }
        },
        CHARGING {
            /** Half-cosine current pulses 30° wide at each crest. */
            @Override double amplitude(int k) {
                return fourier(k, Family::pulse) / fourier(1, Family::pulse);
            }
        };

        abstract double amplitude(int k);

        private static double pulse(double x) {
            double half = Math.PI / 12;
            double up = x - Math.PI / 2;
            double down = x - 3 * Math.PI / 2;
            if (Math.abs(up) < half) {
                return Math.cos(up / half * Math.PI / 2);
            }
            return Math.abs(down) < half ? -Math.cos(down / half * Math.PI / 2) : 0;
        }

        private static double fourier(int k, DoubleUnaryOperator wave) {
            int steps = 14_400;
            double re = 0;
            double im = 0;
            for (int i = 0; i < steps; i++) {
                double x = 2 * Math.PI * (i + 0.5) / steps;
                re += wave.applyAsDouble(x) * Math.cos(k * x);
                im += wave.applyAsDouble(x) * Math.sin(k * x);
            }
            return Math.hypot(re, im) * 2 / steps;
        }
    }

    private final int rateHz;
    private final float[] samples;
    private final SplittableRandom random;
    private double humPower;
    private double buzzPower;

    NoiseMixture(int rateHz, double seconds, long seed) {
        this.rateHz = rateHz;
        samples = new float[(int) (rateHz * seconds)];
        random = new SplittableRandom(seed);
    }

    /** White noise of this plain RMS level over the whole band of the sample rate. */
    NoiseMixture hiss(double dbfs) {
        double sigma = Math.pow(10, dbfs / 20);
        for (int i = 0; i < samples.length; i++) {
            samples[i] += (float) (sigma * gaussian());
        }
        return this;
    }

    NoiseMixture tone(double hz, double dbfs) {
        double amplitude = Math.sqrt(2) * Math.pow(10, dbfs / 20);
        double phase = 2 * Math.PI * random.nextDouble();
        for (int i = 0; i < samples.length; i++) {
            samples[i] += (float) (amplitude * Math.sin(phase + 2 * Math.PI * hz * i / rateHz));
        }
        return this;
    }

    NoiseMixture mains(Family family, double mainsHz, double humDbfs) {
        return mains(family, mainsHz, 0, humDbfs);
    }

    /** Mains noise whose harmonics 1 to 5 have together this level; the frequency glides by {@code driftHz} over the take. */
    NoiseMixture mains(Family family, double mainsHz, double driftHz, double humDbfs) {
        double[] amplitudes = new double[Math.max(6, (int) Math.min(10_000, 0.45 * rateHz) / (int) mainsHz)];
        double power = 0;
        for (int k = 1; k < amplitudes.length; k++) {
            amplitudes[k] = family.amplitude(k);
            power += k <= 5 ? amplitudes[k] * amplitudes[k] / 2 : 0;
        }
        double scale = Math.sqrt(Math.pow(10, humDbfs / 10) / power);
        List<double[]> harmonics = new ArrayList<>();
        for (int k = 1; k < amplitudes.length; k++) {
            double a = scale * amplitudes[k];
            if (a == 0) {
                continue;
            }
            humPower += k <= 5 ? a * a / 2 : 0;
            buzzPower += k > 5 && k * mainsHz < 2000 ? a * a / 2 : 0;
            harmonics.add(new double[] {k, a, 2 * Math.PI * random.nextDouble()});
        }
        addSeries(harmonics, mainsHz, driftHz);
        return this;
    }

    /** One turn of the fundamental is made once, finely; the take reads it at its phase (linear interpolation). */
    private void addSeries(List<double[]> harmonics, double mainsHz, double driftHz) {
        int steps = 1 << 16;
        double[] wave = new double[steps + 1];
        for (double[] h : harmonics) {
            for (int i = 0; i <= steps; i++) {
                wave[i] += h[1] * Math.sin(h[2] + 2 * Math.PI * h[0] * i / steps);
            }
        }
        double seconds = (double) samples.length / rateHz;
        for (int i = 0; i < samples.length; i++) {
            double t = (double) i / rateHz;
            double turns = (mainsHz - driftHz / 2) * t + driftHz / (2 * seconds) * t * t;
            double at = (turns - Math.floor(turns)) * steps;
            int whole = (int) at;
            samples[i] += (float) (wave[whole] + (at - whole) * (wave[whole + 1] - wave[whole]));
        }
    }

    double humDbfs() {
        return 10 * Math.log10(humPower);
    }

    /** Harmonics from 6 to 2 kHz. */
    double buzzDbfs() {
        return 10 * Math.log10(buzzPower);
    }

    float[] samples() {
        return samples;
    }

    NoiseReading read() {
        return read(samples, rateHz, allQuiet(rateHz, samples.length));
    }

    static NoiseReading read(float[] samples, int rateHz, ActivityReading activity) {
        HopGrid grid = new HopGrid(rateHz);
        NoiseMeter meter = new NoiseMeter(grid, NoiseMeter.USUAL_MEMORY_SECONDS);
        hear(new ShortTimeSpectrum(grid, meter), samples, AudioBlock.DEFAULT_FRAMES);
        return meter.reading(activity);
    }

    static void hear(ShortTimeSpectrum spectrum, float[] samples, int blockFrames) {
        AudioBlock block = new AudioBlock(blockFrames);
        for (int at = 0; at < samples.length; at += blockFrames) {
            int frames = Math.min(blockFrames, samples.length - at);
            System.arraycopy(samples, at, block.samples(), 0, frames);
            block.set(at, frames);
            spectrum.accept(block);
        }
    }

    static ActivityReading allQuiet(int rateHz, int frames) {
        HopGrid grid = new HopGrid(rateHz);
        byte[] states = new byte[frames / grid.hopFrames()];
        Arrays.fill(states, ActivityReading.QUIET);
        return new ActivityReading(grid, 0, states, -90);
    }

    private double gaussian() {
        double u = random.nextDouble();
        return Math.sqrt(-2 * Math.log(1 - u)) * Math.cos(2 * Math.PI * random.nextDouble());
    }
}
