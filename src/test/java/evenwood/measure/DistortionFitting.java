package evenwood.measure;

import evenwood.evaluate.Evaluation;
import evenwood.evaluate.TrainingCurve;
import evenwood.evaluate.TrainingTakes;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Fits {@link DistortionModel}: {@code mvn -q -Pevaluate verify -Devaluation=DistortionFitting} prints its constants.
 *
 * <p>How: logistic regression, iteratively reweighted least squares, ridge 5 on standardised features, both classes of
 * equal weight. Fitted on the takes of {@link TrainingTakes} alone; the evaluation uses another bank, other phrases and
 * other characteristics.
 */
public final class DistortionFitting implements Evaluation {
    private static final double RIDGE = 5;
    private static final int ROUNDS = 25;

    @Override
    public void run(PrintStream out) {
        List<double[]> features = new ArrayList<>();
        List<Double> labels = new ArrayList<>();
        TrainingTakes.each((samples, rateHz, bits, curve, shortDb) -> {
            DistortionMeter meter = new DistortionMeter(new evenwood.sound.SoundFormat(rateHz, 1, 1, bits), new HopGrid(rateHz), 4000);
            Blocks.feed(samples, meter::accept);
            double[] values = meter.features();
            features.add(values);
            labels.add(curve == null ? 0.0 : 1.0);
            out.printf(Locale.ROOT, "# %s,%s,%s%n", curve == null ? "CLEAN" : curve, shortDb, Arrays.toString(values).replaceAll("[\\[\\] ]", ""));
        });
        fit(features.toArray(new double[0][]), labels.stream().mapToDouble(x -> x).toArray(), out);
    }

    private static void fit(double[][] x, double[] y, PrintStream out) {
        int columns = x[0].length;
        double[] mean = new double[columns];
        double[] deviation = new double[columns];
        for (int j = 0; j < columns; j++) {
            int column = j;
            mean[j] = Arrays.stream(x).mapToDouble(row -> row[column]).average().orElseThrow();
            deviation[j] = Math.sqrt(Arrays.stream(x).mapToDouble(row -> Math.pow(row[column] - mean[column], 2)).average().orElseThrow()) + 1e-9;
        }
        double[] weight = new double[columns + 1];
        for (int round = 0; round < ROUNDS; round++) {
            improve(weight, x, y, mean, deviation);
        }
        double offset = weight[0];
        double[] slope = new double[columns];
        for (int j = 0; j < columns; j++) {
            slope[j] = weight[j + 1] / deviation[j];
            offset -= slope[j] * mean[j];
        }
        out.printf(Locale.ROOT, "OFFSET = %.4f%nWEIGHTS:%n", offset);
        for (int j = 0; j < columns; j++) {
            out.printf(Locale.ROOT, "        %.4f, // %s (standardised %.2f)%n", slope[j], DistortionFeatures.NAMES[j], weight[j + 1]);
        }
    }

    private static void improve(double[] weight, double[][] x, double[] y, double[] mean, double[] deviation) {
        double distorted = Arrays.stream(y).sum();
        RealMatrix curvature = MatrixUtils.createRealIdentityMatrix(weight.length).scalarMultiply(RIDGE);
        curvature.setEntry(0, 0, 1e-6);
        RealVector gradient = MatrixUtils.createRealVector(new double[weight.length]);
        for (int j = 1; j < weight.length; j++) {
            gradient.setEntry(j, -RIDGE * weight[j]);
        }
        for (int i = 0; i < y.length; i++) {
            double[] z = new double[weight.length];
            z[0] = 1;
            double sum = weight[0];
            for (int j = 1; j < weight.length; j++) {
                z[j] = (x[i][j - 1] - mean[j - 1]) / deviation[j - 1];
                sum += weight[j] * z[j];
            }
            double p = 1 / (1 + Math.exp(-sum));
            double importance = y.length / 2.0 / (y[i] == 1 ? distorted : y.length - distorted);
            for (int j = 0; j < weight.length; j++) {
                gradient.addToEntry(j, importance * (y[i] - p) * z[j]);
                for (int k = 0; k < weight.length; k++) {
                    curvature.addToEntry(j, k, importance * p * (1 - p) * z[j] * z[k]);
                }
            }
        }
        RealVector step = new LUDecomposition(curvature).getSolver().solve(gradient);
        for (int j = 0; j < weight.length; j++) {
            weight[j] += step.getEntry(j);
        }
    }
}
