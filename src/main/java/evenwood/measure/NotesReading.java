package evenwood.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/**
 * The notes of a take, in order of time.
 *
 * @param notes what was played; empty when nothing was
 */
public record NotesReading(List<Note> notes) {
    private static final double USUAL_SHARE = 0.50;

    public NotesReading {
        notes = List.copyOf(notes);
    }

    /** Each note that was played alone and clearly, from low to high. */
    public List<NoteSummary> summaries() {
        SortedMap<Integer, List<Note>> byNote = new TreeMap<>();
        for (Note note : notes) {
            if (note.midi() != NoteName.NONE && !note.polyphonic()) {
                byNote.computeIfAbsent(note.midi(), midi -> new ArrayList<>()).add(note);
            }
        }
        return byNote.entrySet().stream().map(entry -> summary(entry.getKey(), entry.getValue())).toList();
    }

    private static NoteSummary summary(int midi, List<Note> same) {
        return new NoteSummary(midi, percentile(sorted(same, Note::frequencyHz), USUAL_SHARE), same.size(),
            percentile(sorted(same, Note::levelDbfs), USUAL_SHARE), percentile(sorted(same, Note::peakDbfs), USUAL_SHARE));
    }

    private static double[] sorted(List<Note> notes, ToDoubleFunction<Note> value) {
        double[] values = notes.stream().mapToDouble(value).toArray();
        Arrays.sort(values);
        return values;
    }

    /** Between the two nearest values in proportion (type 7 of Hyndman and Fan 1996). */
    private static double percentile(double[] sorted, double share) {
        double place = share * (sorted.length - 1);
        int below = (int) place;
        int above = Math.min(sorted.length - 1, below + 1);
        double part = place - below;
        return part == 0 || sorted[below] == sorted[above] ? sorted[below] : sorted[below] * (1 - part) + sorted[above] * part;
    }
}
