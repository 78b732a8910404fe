package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.takes.PackagedTakes;
import evenwood.takes.Take;
import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Where the hops and steps fall is chance, live: soft, usual and hard of the packaged takes must not depend on it. */
class DynamicsRealAudioTest {
    private static final double[] SHIFTS_HOPS = {0, 0.21, 0.83};
    private static final double WANTED_DB = 0.2;
    /** Reached: see the table. What is left over are single strokes in ringing strings and a bow's edges that are heard or not. */
    private static final double MOST_DB = 0.5;
    private static final String[] FIGURES = {"soft", "usual", "hard"};
    private static final String HEAD = "| take | soft, dBFS | moves by dB | usual | moves by dB | hard | moves by dB |\n|---|---|---|---|---|---|---|\n";

    @Test
    void whereTheHopsFallDoesNotMoveThem() {
        StringBuilder table = new StringBuilder(HEAD);
        double[] worst = new double[FIGURES.length];
        double[] sum = new double[FIGURES.length];
        int[] within = new int[FIGURES.length];
        int takes = 0;
        for (Take take : PackagedTakes.catalogue()) {
            double[][] figures = shifted(PackagedTakes.samples(take), take.sampleRateHz());
            takes++;
            table.append("| ").append(take.instrument().id()).append(' ').append(take.voice().bank().name().toLowerCase(Locale.ROOT));
            for (int i = 0; i < FIGURES.length; i++) {
                double moves = Arrays.stream(figures[i]).max().orElseThrow() - Arrays.stream(figures[i]).min().orElseThrow();
                worst[i] = Math.max(worst[i], moves);
                sum[i] += moves;
                within[i] += moves <= WANTED_DB ? 1 : 0;
                table.append(String.format(Locale.ROOT, " | %.1f | %.2f", figures[i][0], moves));
            }
            table.append(" |\n");
        }
        for (int i = 0; i < FIGURES.length; i++) {
            table.append(String.format(Locale.ROOT, "%n%s: %d of %d takes within %.1f dB, mean %.3f, worst %.2f%n", FIGURES[i], within[i], takes, WANTED_DB,
                sum[i] / takes, worst[i]));
        }
        AccuracyTable.write("dynamics-shifted", table);
        for (int i = 0; i < FIGURES.length; i++) {
            assertThat((double) within[i] / takes).as(FIGURES[i] + ": share of takes within " + WANTED_DB + " dB").isGreaterThan(0.95);
            assertThat(worst[i]).as(FIGURES[i] + ": worst take").isLessThan(MOST_DB);
        }
    }

    private static double[][] shifted(float[] samples, int sampleRateHz) {
        double[][] figures = new double[FIGURES.length][SHIFTS_HOPS.length];
        for (int i = 0; i < SHIFTS_HOPS.length; i++) {
            int from = (int) (SHIFTS_HOPS[i] * new HopGrid(sampleRateHz).hopFrames());
            DynamicsReading dynamics = NoteScore.dynamics(Arrays.copyOfRange(samples, from, samples.length), sampleRateHz);
            figures[0][i] = dynamics.softDbfs();
            figures[1][i] = dynamics.usualDbfs();
            figures[2][i] = dynamics.hardDbfs();
        }
        return figures;
    }
}
