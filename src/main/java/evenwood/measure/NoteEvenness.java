package evenwood.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hipparchus.stat.StatUtils;

/**
 * Which notes jump out or vanish against their neighbours.
 *
 * <p>In: a {@link NotesReading}. Out: one {@link Unevenness} for each note that was played alone and beside others.
 * <p>How: each time a note is heard, its level is held against a straight line over pitch through the notes played shortly
 * before and after it within {@value #NEAR_SEMITONES} semitones, so that soft and hard phrases and the instrument's own slope from
 * low to high do not count. The figure is the median over all times; its uncertainty the 95 % range of a median from the
 * scatter of the times, at least {@value #LEAST_HALF_WIDTH_DB} dB over √times for the player's hand. Source: our choice;
 * median's error 1.25 σ/√n, σ from the median absolute deviation (textbook figures, from memory).
 * <p>Limits: notes in chords are left out; a single time tells little and says so.
 */
public final class NoteEvenness {
    private static final int NEAR_NOTES = 5;
    private static final double NEAR_SEMITONES = 7;
    private static final int FEWEST_NEIGHBOURS = 3;
    private static final double LEAST_HALF_WIDTH_DB = 4;
    private static final double DEVIATION_PER_MAD = 1.4826;
    private static final double MEDIAN_ERROR = 1.25;

    /**
     * @param midi         the note
     * @param frequencyHz  median pitch
     * @param count        how many times it was heard beside others
     * @param differenceDb over (positive) or under its neighbours
     * @param halfWidthDb  95 %, ±
     */
    public record Unevenness(int midi, double frequencyHz, int count, double differenceDb, double halfWidthDb) {
        public String name() {
            return NoteName.of(midi);
        }
    }

    private NoteEvenness() { }

    /** From low to high; notes without enough neighbours are left out. */
    public static List<Unevenness> of(NotesReading reading) {
        List<Note> alone = reading.notes().stream()
            .filter(note -> !note.polyphonic() && note.midi() != NoteName.NONE && Double.isFinite(note.levelDbfs())).toList();
        Map<Integer, List<double[]>> times = new TreeMap<>();
        for (int at = 0; at < alone.size(); at++) {
            double expected = expectedDb(alone, at);
            if (!Double.isNaN(expected)) {
                Note note = alone.get(at);
                times.computeIfAbsent(note.midi(), midi -> new ArrayList<>()).add(new double[] {note.levelDbfs() - expected, note.frequencyHz()});
            }
        }
        return times.entrySet().stream().map(each -> unevenness(each.getKey(), each.getValue())).toList();
    }

    /** Level the neighbours in time and pitch let expect; NaN where there are too few. */
    private static double expectedDb(List<Note> notes, int at) {
        Note note = notes.get(at);
        double number = NoteName.number(note.frequencyHz());
        List<double[]> points = new ArrayList<>();
        for (int i = Math.max(0, at - NEAR_NOTES); i <= Math.min(notes.size() - 1, at + NEAR_NOTES); i++) {
            double away = NoteName.number(notes.get(i).frequencyHz()) - number;
            if (notes.get(i).midi() != note.midi() && Math.abs(away) <= NEAR_SEMITONES) {
                points.add(new double[] {away, notes.get(i).levelDbfs()});
            }
        }
        return points.size() < FEWEST_NEIGHBOURS ? Double.NaN : atZero(points);
    }

    /** The line through the points (least squares, its slope drawn towards flat for points that lie close together), at 0. */
    private static double atZero(List<double[]> points) {
        double x = points.stream().mapToDouble(point -> point[0]).average().orElseThrow();
        double y = StatUtils.percentile(points.stream().mapToDouble(point -> point[1]).toArray(), 50);
        double across = points.stream().mapToDouble(point -> (point[0] - x) * (point[1] - y)).sum();
        double spread = points.stream().mapToDouble(point -> (point[0] - x) * (point[0] - x)).sum() + NEAR_SEMITONES * NEAR_SEMITONES;
        return y - x * across / spread;
    }

    private static Unevenness unevenness(int midi, List<double[]> times) {
        double[] differences = times.stream().mapToDouble(time -> time[0]).toArray();
        double median = StatUtils.percentile(differences, 50);
        double mad = StatUtils.percentile(Arrays.stream(differences).map(difference -> Math.abs(difference - median)).toArray(), 50);
        double rootCount = Math.sqrt(differences.length);
        double halfWidth = Math.max(LEAST_HALF_WIDTH_DB / rootCount, 1.96 * MEDIAN_ERROR * DEVIATION_PER_MAD * mad / rootCount);
        return new Unevenness(midi, StatUtils.percentile(times.stream().mapToDouble(time -> time[1]).toArray(), 50), differences.length, median, halfWidth);
    }
}
