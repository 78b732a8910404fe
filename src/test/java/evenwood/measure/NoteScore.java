package evenwood.measure;

import evenwood.takes.PackagedTakes;
import evenwood.takes.PlayedNote;
import evenwood.takes.Take;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.BiFunction;

/** Holds a {@link NotesReading} against what was really played; scores of several takes add up. */
final class NoteScore {
    static final double TOLERANCE_CENTS = 50;
    /** Strings struck within this are one event: a strum. */
    private static final double TOGETHER_SECONDS = 0.05;

    private final double toleranceSeconds;
    int events;
    int found;
    int told;
    int alone;
    int pitchRight;
    int octaveWrong;
    int calledChord;
    int chords;
    int chordsCalledChord;
    final List<String> misses = new ArrayList<>();

    NoteScore(double toleranceSeconds) {
        this.toleranceSeconds = toleranceSeconds;
    }

    static NoteScore of(Take take, double toleranceSeconds) {
        NoteScore score = new NoteScore(toleranceSeconds);
        score.add(PackagedTakes.notes(take), read(PackagedTakes.samples(take), take.sampleRateHz()));
        return score;
    }

    static NotesReading read(float[] samples, int sampleRateHz) {
        return heard(samples, sampleRateHz, NoteMeter::reading);
    }

    static DynamicsReading dynamics(float[] samples, int sampleRateHz) {
        return heard(samples, sampleRateHz, (notes, activity) -> notes.dynamics(activity, notes.reading(activity)));
    }

    private static <T> T heard(float[] samples, int sampleRateHz, BiFunction<NoteMeter, ActivityReading, T> reading) {
        HopGrid grid = new HopGrid(sampleRateHz);
        int hops = samples.length / grid.hopFrames() + 1;
        ActivityMeter activity = new ActivityMeter(grid, hops);
        NoteMeter notes = new NoteMeter(grid, hops);
        Blocks.feed(samples, block -> {
            activity.accept(block);
            notes.accept(block);
        });
        return reading.apply(notes, activity.reading());
    }

    void add(NoteScore other) {
        events += other.events;
        found += other.found;
        told += other.told;
        alone += other.alone;
        pitchRight += other.pitchRight;
        octaveWrong += other.octaveWrong;
        calledChord += other.calledChord;
        chords += other.chords;
        chordsCalledChord += other.chordsCalledChord;
    }

    double recall() {
        return found / (double) Math.max(1, events);
    }

    double precision() {
        return found / (double) Math.max(1, told);
    }

    double fMeasure() {
        return 2.0 * found / Math.max(1, events + told);
    }

    double pitchShare() {
        return pitchRight / (double) Math.max(1, alone);
    }

    String row(String name) {
        return String.format(Locale.ROOT, "| %s | %d | %.3f | %.3f | %.3f | %s | %s | %s | %s |", name, events, precision(), recall(), fMeasure(),
            percent(pitchRight, alone), percent(octaveWrong, alone), percent(calledChord, alone), percent(chordsCalledChord, chords));
    }

    private static String percent(int part, int whole) {
        return whole == 0 ? "–" : String.format(Locale.ROOT, "%.1f %%", 100.0 * part / whole);
    }

    void add(List<PlayedNote> played, NotesReading reading) {
        List<List<PlayedNote>> truth = together(played);
        boolean[] used = new boolean[reading.notes().size()];
        events += truth.size();
        told += used.length;
        for (List<PlayedNote> event : truth) {
            int best = -1;
            double bestOff = toleranceSeconds;
            for (int i = 0; i < used.length; i++) {
                double at = reading.notes().get(i).startSeconds();
                double off = Math.max(0, Math.max(event.get(0).startSeconds() - at, at - event.get(event.size() - 1).startSeconds()));
                if (!used[i] && off <= bestOff) {
                    best = i;
                    bestOff = off;
                }
            }
            if (best >= 0) {
                used[best] = true;
                found++;
                judge(event, reading.notes().get(best));
            } else {
                misses.add(String.format(Locale.ROOT, "missed %.3f midi %d vel %d", event.get(0).startSeconds(), event.get(0).midi(), event.get(0).velocity()));
            }
        }
        for (int i = 0; i < used.length; i++) {
            if (!used[i]) {
                misses.add(String.format(Locale.ROOT, "extra %.3f %s", reading.notes().get(i).startSeconds(), reading.notes().get(i).name()));
            }
        }
    }

    private void judge(List<PlayedNote> event, Note note) {
        if (event.size() > 1) {
            chords++;
            chordsCalledChord += note.polyphonic() ? 1 : 0;
            return;
        }
        alone++;
        calledChord += note.polyphonic() ? 1 : 0;
        double cents = note.frequencyHz() <= 0 ? 9999 : NoteName.cents(note.frequencyHz(), event.get(0).frequencyHz());
        if (Math.abs(cents) <= TOLERANCE_CENTS) {
            pitchRight++;
        } else {
            double octaves = cents / 1200;
            boolean octave = note.frequencyHz() > 0 && Math.abs(octaves - Math.rint(octaves)) * 1200 <= TOLERANCE_CENTS;
            octaveWrong += octave ? 1 : 0;
            misses.add(String.format(Locale.ROOT, "pitch %.3f midi %d read %.1f cents off, clarity %.2f", event.get(0).startSeconds(),
                event.get(0).midi(), cents, note.clarity()));
        }
    }

    private static List<List<PlayedNote>> together(List<PlayedNote> played) {
        List<PlayedNote> sorted = new ArrayList<>(played);
        sorted.sort(Comparator.comparingDouble(PlayedNote::startSeconds));
        List<List<PlayedNote>> events = new ArrayList<>();
        double last = Double.NEGATIVE_INFINITY;
        for (PlayedNote note : sorted) {
            if (note.startSeconds() - last > TOGETHER_SECONDS) {
                events.add(new ArrayList<>());
            }
            events.get(events.size() - 1).add(note);
            last = note.startSeconds();
        }
        return events;
    }
}
