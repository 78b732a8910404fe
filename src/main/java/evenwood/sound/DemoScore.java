package evenwood.sound;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;

/**
 * What the demo plays, in about a minute: two seconds of quiet, a soft phrase, a usual phrase, hard strums, a tune.
 *
 * <p>The tune is made up for the demo. The seed moves every stroke a little in time and strength, as hands do.
 */
final class DemoScore {
    private static final double QUIET_SECONDS = 2;
    private static final double REST_SECONDS = 1.6;
    private static final double EIGHTH_SECONDS = 0.272;
    private static final double SOFT = 0.18;
    private static final double USUAL = 0.60;
    private static final double HARD = 0.96;
    /** Frets of the four pairs, lowest first. */
    private static final int[] G = {0, 0, 2, 3};
    private static final int[] C = {0, 2, 3, 0};
    private static final int[] D = {2, 0, 0, 2};
    private static final int[] E_MINOR = {0, 2, 2, 0};
    private static final int[] A_MINOR = {2, 2, 3, 0};
    /** MIDI notes an eighth each; 0 lets the last one ring. */
    private static final int[] TUNE = {
        62, 67, 69, 71, 69, 67, 64, 62, 64, 67, 67, 69, 71, 0, 69, 0, 71, 72, 71, 69, 67, 69, 66, 62, 64, 66, 67, 69, 67, 0, 0, 0,
        55, 57, 59, 62, 59, 57, 55, 0, 60, 59, 60, 64, 62, 0, 59, 0, 57, 59, 60, 62, 64, 66, 67, 69, 71, 69, 66, 69, 67, 0, 0, 0,
    };
    private static final int[][] TUNE_CHORDS = {G, E_MINOR, C, G, G, C, A_MINOR, G};

    private final SplittableRandom random;
    private final List<DemoNote> notes = new ArrayList<>();
    private final List<Double> starts = new ArrayList<>(List.of(0.0, QUIET_SECONDS));
    private double now = QUIET_SECONDS;

    private DemoScore(long seed) {
        random = new SplittableRandom(seed);
    }

    static List<DemoNote> of(long seed) {
        DemoScore score = new DemoScore(seed);
        score.play();
        return score.notes.stream().sorted(Comparator.comparingDouble(DemoNote::startSeconds)).toList();
    }

    private void play() {
        broken(SOFT, 2, G, C);
        rest();
        broken(USUAL, 2, G, E_MINOR, D);
        rest();
        strummed(HARD, G, C, D, G);
        rest();
        tune();
    }

    /** When the last string is silent and a moment of quiet has passed. */
    static double lengthSeconds(List<DemoNote> notes) {
        return notes.stream().mapToDouble(DemoNote::stopSeconds).max().orElse(0) + QUIET_SECONDS;
    }

    /** Where the parts begin, in seconds: quiet, soft, usual, hard, tune. */
    static List<Double> partStartsSeconds(long seed) {
        DemoScore score = new DemoScore(seed);
        score.play();
        return List.copyOf(score.starts);
    }

    private void rest() {
        now += REST_SECONDS;
        starts.add(now);
    }

    private void broken(double strength, int times, int[]... chords) {
        int[] order = {0, 1, 2, 3, 2, 1, 3, 2};
        double end = now + chords.length * times * order.length * EIGHTH_SECONDS;
        for (int[] chord : chords) {
            double next = now + times * order.length * EIGHTH_SECONDS;
            for (int i = 0; i < times * order.length; i++) {
                int course = order[i % order.length];
                double accent = i % order.length == 0 ? 0.08 : 0;
                strike(now, Math.min(next, end), course, chord[course], strength + accent);
                now += EIGHTH_SECONDS;
            }
        }
    }

    private void strummed(double strength, int[]... chords) {
        boolean[] struck = {true, false, true, true, false, true, true, true};
        for (int[] chord : chords) {
            double end = now + struck.length * EIGHTH_SECONDS;
            for (int i = 0; i < struck.length; i++) {
                if (struck[i]) {
                    strum(chord, i % 2 == 0, end, strength - (i % 2 == 0 ? 0 : 0.1));
                }
                now += EIGHTH_SECONDS;
            }
        }
        now += EIGHTH_SECONDS;
    }

    private void tune() {
        for (int i = 0; i < TUNE.length; i++) {
            boolean barStarts = i % 8 == 0;
            if (barStarts || i % 8 == 4) {
                int[] chord = TUNE_CHORDS[i / 8];
                int bass = barStarts ? 0 : 1;
                if (DemoNote.courseOf(Math.max(TUNE[i], 50)) > bass) {
                    strike(now, now + 4 * EIGHTH_SECONDS, bass, chord[bass], USUAL - 0.1);
                }
            }
            if (TUNE[i] > 0) {
                int eighths = 1;
                while (i + eighths < TUNE.length && TUNE[i + eighths] == 0) {
                    eighths++;
                }
                double ring = eighths * EIGHTH_SECONDS + (eighths > 2 ? 0.6 : 0.04);
                strike(now, now + ring, DemoNote.courseOf(TUNE[i]), DemoNote.fretOf(TUNE[i]), USUAL + (barStarts ? 0.14 : 0.04));
            }
            now += EIGHTH_SECONDS;
        }
    }

    private void strum(int[] chord, boolean down, double end, double strength) {
        double apart = 0.006 + 0.006 * random.nextDouble();
        double start = now + 0.006 * human();
        for (int i = 0; i < chord.length; i++) {
            int course = down ? i : chord.length - 1 - i;
            notes.add(new DemoNote(start + i * apart, end, course, chord[course], limited(strength - 0.05 * i + 0.05 * human())));
        }
    }

    private void strike(double start, double stop, int course, int fret, double strength) {
        notes.add(new DemoNote(start + 0.008 * human(), stop, course, fret, limited(strength + 0.06 * human())));
    }

    /** Between −1 and 1, mostly near 0. */
    private double human() {
        return random.nextDouble() + random.nextDouble() - 1;
    }

    private static double limited(double strength) {
        return Math.max(0, Math.min(1, strength));
    }
}
