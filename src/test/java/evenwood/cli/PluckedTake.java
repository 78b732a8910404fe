package evenwood.cli;

import evenwood.takes.TakeFile;
import java.nio.file.Path;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;

/** A short take for the commands. */
final class PluckedTake {
    static final int RATE_HZ = 48_000;

    private PluckedTake() { }

    /** Decaying harmonic notes of rising pitch with rests before and after, over a little hiss far below. */
    static Path written(Path file, double amplitude) {
        SplittableRandom random = new SplittableRandom(1);
        write(file, 14 * RATE_HZ, i -> {
            double seconds = (double) i / RATE_HZ - 2;
            double hiss = amplitude * 1e-4 * (random.nextDouble() - 0.5);
            if (seconds < 0 || seconds > 10) {
                return hiss;
            }
            int note = (int) (seconds / 0.5);
            double since = seconds - note * 0.5;
            double loud = 0.25 + 0.75 * (note % 4) / 3;
            double sum = 0;
            for (int k = 1; k <= 6; k++) {
                sum += Math.sin(2 * Math.PI * k * 147 * Math.pow(2, (note % 12) / 12.0) * since) * Math.exp(-since * (3 + k)) / (k * k);
            }
            return hiss + amplitude * loud * sum * Math.min(1, since / 0.002) * Math.min(1, (0.5 - since) / 0.03);
        });
        return file;
    }

    static void write(Path file, int frames, IntToDoubleFunction sample) {
        float[] samples = new float[frames];
        for (int i = 0; i < frames; i++) {
            samples[i] = (float) sample.applyAsDouble(i);
        }
        TakeFile.writePcm(file, samples, RATE_HZ, 24);
    }
}
