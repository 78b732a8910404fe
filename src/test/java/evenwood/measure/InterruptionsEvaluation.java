package evenwood.measure;

import evenwood.evaluate.Evaluation;
import evenwood.takes.Faults;
import evenwood.takes.Interruptions;
import evenwood.takes.PackagedTakes;
import evenwood.takes.Take;
import java.io.PrintStream;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Clicks and dropouts on takes of real instruments: false alarms on clean ones, and what is found of those put in. */
public final class InterruptionsEvaluation implements Evaluation {
    private static final int RATE_HZ = 48_000;
    private static final double[] CRACKLE_DBFS = {-10, -20, -30, -40};
    private static final int HOLES = 10;
    /** From there on the judge calls crackle clear. */
    private static final double MOST_CLICKS_PER_MINUTE = 2;
    /** Our choice: clicks that stand out of the playing (the loudest row), and stretches of zeros or of one held sample. */
    private static final double LEAST_FOUND = 0.95;
    private static final int[] ASKED_ROWS = {0, CRACKLE_DBFS.length, CRACKLE_DBFS.length + 1};
    private static final int NEAR_FRAMES = 48;

    private final int[] found = new int[CRACKLE_DBFS.length + Interruptions.Hole.values().length];
    private final int[] there = new int[found.length];
    private final int[] wrong = new int[found.length];

    @Override
    public void run(PrintStream out) {
        double seconds = 0;
        int clicks = 0;
        int dropouts = 0;
        int number = 0;
        for (Take take : PackagedTakes.catalogue()) {
            number++;
            float[] clean = PackagedTakes.samples(number % 2 == 0 ? take : take.withRoom(-80, number));
            seconds += (double) clean.length / RATE_HZ;
            clicks += HeardInBlocks.clicks(clean, RATE_HZ).count();
            dropouts += HeardInBlocks.dropouts(clean, RATE_HZ).size();
            for (int i = 0; i < CRACKLE_DBFS.length; i++) {
                crackle(i, clean, number);
            }
            for (Interruptions.Hole hole : Interruptions.Hole.values()) {
                holes(CRACKLE_DBFS.length + hole.ordinal(), clean, hole, number);
            }
        }
        out.printf(Locale.ROOT, "Clean: %d takes, %.1f minutes: %d clicks, %d dropouts.%n%n", number, seconds / 60, clicks, dropouts);
        out.println("| put in | amount | there | found | found elsewhere |");
        out.println("|---|---|---|---|---|");
        for (int i = 0; i < found.length; i++) {
            String what = i < CRACKLE_DBFS.length ? String.format(Locale.ROOT, "clicks | 1 a second, up to 12 dB under a peak of %.0f dBFS", CRACKLE_DBFS[i])
                : "holes of 1 to 50 ms | " + Interruptions.Hole.values()[i - CRACKLE_DBFS.length].name().toLowerCase(Locale.ROOT).replace('_', ' ');
            out.printf(Locale.ROOT, "| %s | %d | %.1f %% | %d |%n", what, there[i], 100.0 * found[i] / there[i], wrong[i]);
        }
        if (dropouts > 0 || clicks / (seconds / 60) >= MOST_CLICKS_PER_MINUTE || lost() > 0) {
            throw new AssertionError("interruptions: " + dropouts + " dropouts and " + clicks + " clicks in clean takes; rows under " + 100 * LEAST_FOUND + " %: " + lost());
        }
    }

    private long lost() {
        return Arrays.stream(ASKED_ROWS).filter(row -> found[row] < LEAST_FOUND * there[row]).count();
    }

    private void crackle(int row, float[] clean, int number) {
        var injected = Faults.crackle(clean, RATE_HZ, 1, CRACKLE_DBFS[row], number);
        ClickReading reading = HeardInBlocks.clicks(injected.samples(), RATE_HZ);
        int hits = 0;
        for (Interruptions.Spot spot : injected.truth()) {
            hits += reading.startSeconds().stream().anyMatch(at -> Math.abs(at * RATE_HZ - spot.startFrame()) < NEAR_FRAMES) ? 1 : 0;
        }
        there[row] += injected.truth().size();
        found[row] += hits;
        wrong[row] += reading.count() - hits;
    }

    private void holes(int row, float[] clean, Interruptions.Hole hole, int number) {
        var injected = Faults.dropouts(clean, RATE_HZ, hole, HOLES, number);
        List<Dropout> dropouts = HeardInBlocks.dropouts(injected.samples(), RATE_HZ);
        int hits = 0;
        for (Interruptions.Spot spot : injected.truth()) {
            hits += dropouts.stream().anyMatch(d -> Math.abs(d.startFrame() - spot.startFrame()) < 5 && Math.abs(d.frames() - spot.frames()) < 5) ? 1 : 0;
        }
        there[row] += injected.truth().size();
        found[row] += hits;
        wrong[row] += dropouts.size() - hits + HeardInBlocks.clicks(injected.samples(), RATE_HZ).count();
    }
}
