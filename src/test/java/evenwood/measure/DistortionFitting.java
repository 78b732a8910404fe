package evenwood.measure;

import evenwood.evaluate.Evaluation;
import evenwood.evaluate.TrainingTakes;
import evenwood.sound.SoundFormat;
import evenwood.takes.SampledBank;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Fits {@link DistortionModel}: {@code mvn -q -Pevaluate verify -Devaluation=DistortionFitting} writes its trees and prints
 * its two constants.
 *
 * <p>How: {@link TreeGrowing}; then a logistic line on the log odds that trees grown without a bank give to that bank's
 * takes, by Newton's method, both classes of equal weight. Fitted on the takes of {@link TrainingTakes} alone; the
 * evaluation uses other banks, other phrases and other characteristics.
 */
public final class DistortionFitting implements Evaluation {
    private static final Path FILE = Path.of("src", "main", "resources", "evenwood", "measure", "distortion-forest.txt");
    private static final int TREES = 200;
    private static final int FEWEST_IN_A_LEAF = 2;
    private static final int SEED = 1;
    private static final int ROUNDS = 30;

    /** @param distorted 1 or 0 */
    record Example(SampledBank bank, double[] features, double distorted) { }

    @Override
    public void run(PrintStream out) {
        List<Example> examples = new ArrayList<>();
        TrainingTakes.each((bank, samples, rateHz, bits, curve, shortDb) -> {
            DistortionMeter meter = new DistortionMeter(new SoundFormat(rateHz, 1, 1, bits), new HopGrid(rateHz), 4000);
            Blocks.feed(samples, meter::accept);
            examples.add(new Example(bank, meter.features(), curve == null ? 0 : 1));
        });
        fit(examples, FILE, out);
    }

    static void fit(List<Example> examples, Path file, PrintStream out) {
        double[] logOdds = new double[examples.size()];
        for (SampledBank bank : SampledBank.values()) {
            if (examples.stream().anyMatch(example -> example.bank() == bank)) {
                DistortionForest others = new DistortionForest(grown(examples.stream().filter(example -> example.bank() != bank).toList()));
                for (int i = 0; i < logOdds.length; i++) {
                    if (examples.get(i).bank() == bank) {
                        logOdds[i] = DistortionModel.logOdds(others.share(examples.get(i).features()));
                    }
                }
            }
        }
        double[] line = line(logOdds, examples.stream().mapToDouble(Example::distorted).toArray());
        out.printf(Locale.ROOT, "%d examples%nSLOPE = %.4f%nOFFSET = %.4f%n", examples.size(), line[1], line[0]);
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
            Files.write(file, grown(examples));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> grown(List<Example> examples) {
        double[][] x = examples.stream().map(Example::features).toArray(double[][]::new);
        double[] y = examples.stream().mapToDouble(Example::distorted).toArray();
        SplittableRandom random = new SplittableRandom(SEED);
        return IntStream.range(0, TREES).mapToObj(tree -> TreeGrowing.tree(x, y, FEWEST_IN_A_LEAF, random)).toList();
    }

    /** Offset and slope. */
    private static double[] line(double[] x, double[] y) {
        double distorted = java.util.Arrays.stream(y).sum();
        double offset = 0;
        double slope = 1;
        for (int round = 0; round < ROUNDS; round++) {
            double[] sums = new double[5];
            for (int i = 0; i < x.length; i++) {
                double p = 1 / (1 + Math.exp(-offset - slope * x[i]));
                double weight = 1 / (y[i] == 1 ? distorted : y.length - distorted);
                sums[0] += weight * (y[i] - p);
                sums[1] += weight * (y[i] - p) * x[i];
                sums[2] += weight * p * (1 - p);
                sums[3] += weight * p * (1 - p) * x[i];
                sums[4] += weight * p * (1 - p) * x[i] * x[i];
            }
            double determinant = sums[2] * sums[4] - sums[3] * sums[3];
            offset += (sums[4] * sums[0] - sums[3] * sums[1]) / determinant;
            slope += (sums[2] * sums[1] - sums[3] * sums[0]) / determinant;
        }
        return new double[] {offset, slope};
    }
}
