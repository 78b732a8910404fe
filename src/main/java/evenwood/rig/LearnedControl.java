package evenwood.rig;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * What a control of one rig really does, as it was heard.
 *
 * @param control its name
 * @param how     what it was learned from
 * @param curves  the response at some of its positions; only differences between them mean anything
 * @param answers what changed when it was turned, for learning on; none after sweeps, which leave nothing open
 */
public record LearnedControl(String control, How how, List<Curve> curves, List<Answer> answers) {
    /** Playing leaves doubts, a sweep does not. */
    public enum How { TAKES, SWEEP }

    private static final int POINTS_PER_OCTAVE = 12;
    private static final int LOWEST_POINT = -68;
    private static final int HIGHEST_POINT = 52;

    /** Where curves have their points: twelfths of an octave around 1 kHz, 20 Hz to 20 kHz. */
    public static final List<Double> FREQUENCIES_HZ = IntStream.rangeClosed(LOWEST_POINT, HIGHEST_POINT)
        .mapToObj(i -> 1000 * Math.pow(2, (double) i / POINTS_PER_OCTAVE)).toList();

    /**
     * @param at          where the control stood
     * @param levelDb     one value for each of {@link #FREQUENCIES_HZ}
     * @param deviationDb standard error of what it differs from the other curves by, likewise
     * @param cleanUpToDbfs the peak at this tap above which more than 1 % of harmonics come along, if a sweep told
     */
    public record Curve(Setting at, List<Double> levelDb, List<Double> deviationDb, OptionalDouble cleanUpToDbfs) {
        public Curve(Setting at, List<Double> levelDb, List<Double> deviationDb) {
            this(at, levelDb, deviationDb, OptionalDouble.empty());
        }

        public Curve {
            levelDb = List.copyOf(levelDb);
            deviationDb = List.copyOf(deviationDb);
            if (levelDb.size() != FREQUENCIES_HZ.size() || deviationDb.size() != FREQUENCIES_HZ.size()) {
                throw new IllegalArgumentException("learned curve: " + levelDb.size() + " levels and " + deviationDb.size()
                    + " deviations, but " + FREQUENCIES_HZ.size() + " each are needed");
            }
        }

        /** Straight between the points over the logarithm of frequency; beyond them the last one. */
        public double db(double frequencyHz) {
            return between(levelDb, frequencyHz);
        }

        /** Likewise. */
        public double deviationDb(double frequencyHz) {
            return between(deviationDb, frequencyHz);
        }

        private static double between(List<Double> values, double frequencyHz) {
            double place = POINTS_PER_OCTAVE * Math.log(frequencyHz / 1000) / Math.log(2) - LOWEST_POINT;
            int below = (int) Math.max(0, Math.min(values.size() - 2, Math.floor(place)));
            double part = Math.max(0, Math.min(1, place - below));
            return (1 - part) * values.get(below) + part * values.get(below + 1);
        }
    }

    /**
     * What a player's turn did, note by note.
     *
     * @param from  where the control stood in the one take
     * @param to    where it stood in the other
     * @param bands what changed; a level common to all does not matter
     */
    public record Answer(Setting from, Setting to, List<Band> bands) {
        public Answer {
            bands = List.copyOf(bands);
        }
    }

    /**
     * @param centreHz    middle of a third octave
     * @param changeDb    by how much there is more of it
     * @param deviationDb standard error
     */
    public record Band(double centreHz, double changeDb, double deviationDb) { }

    public LearnedControl {
        curves = List.copyOf(curves);
        answers = List.copyOf(answers);
        if (curves.size() < 2) {
            throw new IllegalArgumentException("learned control " + control + ": " + curves.size() + " curves, but at least two are needed");
        }
    }
}
