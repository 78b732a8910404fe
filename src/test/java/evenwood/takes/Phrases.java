package evenwood.takes;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Writes what is played: seeded phrases within the instrument's real range, with humanised timing and strength.
 *
 * <p>How: a key is drawn; scales, arpeggios over fingered chords (each open string stopped at its lowest chord tone),
 * strums of the same chords with the strings some 8 to 20 ms apart, melodies as a bounded walk on the scale, long notes.
 * 1.5 s of rest stand before every phrase, counted from the stopped strings plus {@value #RING_SECONDS} s of ringing out.
 */
final class Phrases {
    static final double REST_SECONDS = 1.5;
    static final double RING_SECONDS = 0.6;
    private static final int[] MAJOR = {0, 2, 4, 5, 7, 9, 11};
    private static final int[][] CHORDS = {{0, 4, 7}, {5, 9, 0}, {7, 11, 2}, {9, 0, 4}};

    private final Take take;
    private final PlayedInstrument instrument;
    private final SplittableRandom random;
    private final int key;
    private final double beatSeconds;
    private final List<PlayedNote> notes = new ArrayList<>();
    private double now;
    private Dynamics strength;

    private Phrases(Take take) {
        this.take = take;
        instrument = take.instrument();
        random = new SplittableRandom(take.seed() * 1000L + instrument.ordinal());
        key = random.nextInt(12);
        beatSeconds = 60 / (88 + 40 * random.nextDouble());
    }

    static List<PlayedNote> of(Take take) {
        Phrases phrases = new Phrases(take);
        phrases.write();
        return List.copyOf(phrases.notes);
    }

    /** Until when the take lasts: the last string stopped, rung out, and a rest. */
    static double lengthSeconds(List<PlayedNote> notes) {
        return notes.stream().mapToDouble(PlayedNote::endSeconds).max().orElse(0) + RING_SECONDS + REST_SECONDS;
    }

    private void write() {
        now = REST_SECONDS;
        for (int i = 0; i < take.kinds().size(); i++) {
            strength = take.dynamics().get(i);
            switch (take.kinds().get(i)) {
                case SCALE -> scale();
                case ARPEGGIO -> arpeggios();
                case STRUM -> strums();
                case MELODY -> melody(scaleTones());
                case LOW_MELODY -> melody(lowTones());
                case HIGH_MELODY -> melody(highTones());
                case CHROMATIC -> chromatic();
                case LONG_NOTES -> longNotes();
            }
            now += RING_SECONDS + REST_SECONDS;
        }
    }

    private void scale() {
        List<Integer> tones = scaleTones();
        int from = random.nextInt(Math.max(1, tones.size() - 10));
        int top = Math.min(8, tones.size() - 1 - from);
        for (int i = 0; i < 2 * top; i++) {
            int step = i <= top ? i : 2 * top - i;
            one(tones.get(from + step), beatSeconds / 2, 0.92);
        }
    }

    private void arpeggios() {
        for (int[] chord : CHORDS) {
            int[] fingered = fingered(chord);
            double start = now;
            double end = start + 2.5 * beatSeconds;
            for (int i = 0; i < 6; i++) {
                int string = i < fingered.length ? i : Math.max(0, 2 * fingered.length - 2 - i);
                add(start + i * beatSeconds / 2.5, end, fingered[string % fingered.length], 0.012);
            }
            now = end;
        }
    }

    private void strums() {
        boolean down = true;
        for (int[] chord : CHORDS) {
            int[] fingered = fingered(chord);
            for (int i = 0; i < 4; i++) {
                double length = beatSeconds * (i == 0 ? 1 : 0.5);
                double spread = 0.008 + 0.012 * random.nextDouble();
                for (int s = 0; s < fingered.length; s++) {
                    int string = down ? s : fingered.length - 1 - s;
                    add(now + s * spread, now + length, fingered[string], 0.002);
                }
                now += length;
                down = !down;
            }
        }
    }

    private List<Integer> lowTones() {
        return scaleTones().stream().filter(midi -> midi <= instrument.lowestMidi() + 12).toList();
    }

    private List<Integer> highTones() {
        List<Integer> tones = scaleTones();
        return tones.stream().filter(midi -> midi >= tones.get(tones.size() - 1) - 12).toList();
    }

    private void melody(List<Integer> tones) {
        int at = tones.size() / 2;
        for (int i = 0; i < 14; i++) {
            at = Math.max(0, Math.min(tones.size() - 1, at + random.nextInt(-3, 4)));
            double beats = i == 13 ? 2 : random.nextInt(4) == 0 ? 1 : 0.5;
            one(tones.get(at), beats * beatSeconds, 0.95);
        }
    }

    private void longNotes() {
        for (int open : instrument.openStrings()) {
            one(open, 2.2 * beatSeconds, 0.9);
            one(Math.min(instrument.highestMidi(), open + 7), 1.4 * beatSeconds, 0.9);
        }
    }

    private void chromatic() {
        for (int midi = instrument.lowestMidi(); midi <= instrument.highestMidi(); midi++) {
            one(midi, 0.6, 0.95);
        }
    }

    private void one(int midi, double lengthSeconds, double held) {
        add(now, now + lengthSeconds * held, midi, 0.010);
        now += lengthSeconds;
    }

    private void add(double start, double end, int midi, double humanSeconds) {
        double early = humanSeconds * (random.nextDouble() + random.nextDouble() - 1);
        int velocity = random.nextInt(strength.lowestVelocity(), strength.highestVelocity() + 1);
        double begin = start + early;
        notes.add(new PlayedNote(begin, Math.max(end, begin + 0.05), midi, velocity));
    }

    /** The tones of the key within two octaves that lie well under the hand: from the lowest string upwards. */
    private List<Integer> scaleTones() {
        int top = Math.min(instrument.highestMidi(), instrument.lowestMidi() + 31);
        List<Integer> tones = new ArrayList<>();
        for (int midi = instrument.lowestMidi(); midi <= top; midi++) {
            for (int step : MAJOR) {
                if ((key + step) % 12 == midi % 12) {
                    tones.add(midi);
                }
            }
        }
        return tones;
    }

    private int[] fingered(int[] chord) {
        int[] open = instrument.openStrings();
        int[] fingered = new int[open.length];
        for (int s = 0; s < open.length; s++) {
            fingered[s] = open[s];
            while (!inChord(fingered[s], chord)) {
                fingered[s]++;
            }
        }
        return fingered;
    }

    private boolean inChord(int midi, int[] chord) {
        for (int tone : chord) {
            if ((key + tone) % 12 == midi % 12) {
                return true;
            }
        }
        return false;
    }
}
