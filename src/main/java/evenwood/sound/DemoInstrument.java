package evenwood.sound;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;

/**
 * The demo's octave mandolin and its player: four pairs of strings over one bridge, struck as the score says.
 *
 * <p>How: eight {@link PluckedString}s that lose a little of their common motion to the bridge and hear each other through
 * it; so pairs beat and die away in two stages, and open strings ring along. A stroke's strength sets level
 * (20 dB from softest to hardest), brightness, the pick's place and its click. Decay times, detuning and pick
 * figures are invented for the demo.
 * <p>Thread: one owner. {@link #next} never allocates.
 */
final class DemoInstrument {
    private static final int PER_COURSE = 2;
    private static final double LOWEST_HZ = 95;
    private static final double DYNAMIC_RANGE_DB = 20;
    private static final double BRIDGE_LOSS = 0.0011;
    private static final double SOFT_PICK_FROM_BRIDGE = 0.155;
    private static final double HARD_PICK_FROM_BRIDGE = 0.115;
    private static final double SOFT_EDGE_SECONDS = 0.00024;
    private static final double HARD_EDGE_SECONDS = 0.00006;
    private static final double SECOND_STRING_SECONDS = 0.0024;
    private static final double SECOND_STRING_STRENGTH = 0.86;
    private static final double CONTACT_SECONDS = 0.011;
    private static final double CONTACT_DECAY_SECONDS = 0.045;
    private static final double HAND_DECAY_SECONDS = 0.16;
    private static final double BRIGHT_SHARE = 0.34;
    private static final double CLICK_DECAY_SECONDS = 0.0016;
    private static final double CLICK_HZ = 4_500;
    private static final double CLICK_SHARE = 0.22;
    /** Cents off, string by string: no pair is ever quite in tune. */
    private static final double[] CENTS = {-0.6, 0.7, 0.5, -0.5, -0.4, 0.6, 0.5, -0.3};
    /** B of each pair when open; steel of usual gauges, from the stiff-string formula π³Ed⁴/(64TL²). */
    private static final double[] INHARMONICITY = {9e-5, 5e-5, 5e-5, 3e-5};

    private final PluckedString[] strings = new PluckedString[DemoNote.COURSES * PER_COURSE];
    private final BridgePickup pickup;
    private final SplittableRandom random;
    private final Stroke[] strokes;
    private final double clickStep;
    private final double clickFade;
    private final double clickScale;
    private int nextStroke;
    private double clickLevel;
    private double clickState;

    /** Something a hand does to one string: plucks it, or comes down on it so that it dies away within {@code restSeconds}. */
    private record Stroke(long frame, int string, double restSeconds, double hz, double decaySeconds, double inharmonicity,
                          double strength, double position, double edgeSeconds) {
        boolean comesDown() {
            return restSeconds > 0;
        }
    }

    DemoInstrument(int sampleRateHz, long seed, List<DemoNote> notes) {
        pickup = new BridgePickup(sampleRateHz);
        random = new SplittableRandom(seed ^ 0x9E3779B97F4A7C15L);
        for (int s = 0; s < strings.length; s++) {
            strings[s] = new PluckedString(sampleRateHz, LOWEST_HZ);
            double hz = DemoNote.openHz(s / PER_COURSE) * Math.pow(2, CENTS[s] / 1200);
            strings[s].tune(hz, decaySeconds(hz, 0), BRIGHT_SHARE * decaySeconds(hz, 0), INHARMONICITY[s / PER_COURSE]);
        }
        strokes = strokes(sampleRateHz, notes);
        clickStep = 1 - Math.exp(-2 * Math.PI * Math.min(CLICK_HZ, 0.4 * sampleRateHz) / sampleRateHz);
        clickFade = Math.exp(-1 / (CLICK_DECAY_SECONDS * sampleRateHz));
        // White noise keeps its density, not its power, when the rate changes: the click sounds the same at every rate.
        clickScale = CLICK_SHARE * Math.sqrt(sampleRateHz / 48_000.0);
    }

    private Stroke[] strokes(int sampleRateHz, List<DemoNote> notes) {
        List<Stroke> all = new ArrayList<>();
        for (DemoNote note : notes) {
            // The pick reaches the second string of a pair a little later, never twice the same.
            double apart = SECOND_STRING_SECONDS * (0.2 + 0.8 * random.nextDouble());
            for (int s = 0; s < PER_COURSE; s++) {
                int string = note.course() * PER_COURSE + s;
                double seconds = note.startSeconds() + s * apart;
                all.add(resting(string, frame(seconds - CONTACT_SECONDS, sampleRateHz), CONTACT_DECAY_SECONDS));
                all.add(struck(string, frame(seconds, sampleRateHz), note, s == 0 ? 1 : SECOND_STRING_STRENGTH));
                if (nobodyStrikesBefore(note, notes)) {
                    all.add(resting(string, frame(note.stopSeconds(), sampleRateHz), HAND_DECAY_SECONDS));
                }
            }
        }
        all.sort(Comparator.comparingLong(Stroke::frame));
        return all.toArray(Stroke[]::new);
    }

    private static Stroke resting(int string, long frame, double decaySeconds) {
        return new Stroke(frame, string, decaySeconds, 0, 0, 0, 0, 0, 0);
    }

    private static Stroke struck(int string, long frame, DemoNote note, double share) {
        double hz = note.hz() * Math.pow(2, CENTS[string] / 1200);
        double shorter = Math.pow(2, note.fret() / 12.0);
        double strength = Decibels.toAmplitude(DYNAMIC_RANGE_DB * (note.strength() - 1)) * share;
        double position = shorter * between(SOFT_PICK_FROM_BRIDGE, HARD_PICK_FROM_BRIDGE, note.strength());
        double edgeSeconds = between(SOFT_EDGE_SECONDS, HARD_EDGE_SECONDS, note.strength());
        return new Stroke(frame, string, 0, hz, decaySeconds(hz, note.fret()), INHARMONICITY[note.course()] * shorter * shorter,
            strength, position, edgeSeconds);
    }

    private static double between(double soft, double hard, double strength) {
        return soft + (hard - soft) * strength;
    }

    /** A note's end counts only if the pair has not been struck again by then. */
    private static boolean nobodyStrikesBefore(DemoNote note, List<DemoNote> notes) {
        return notes.stream().noneMatch(other -> other != note && other.course() == note.course()
            && other.startSeconds() > note.startSeconds() && other.startSeconds() < note.stopSeconds() + CONTACT_SECONDS);
    }

    private static long frame(double seconds, int sampleRateHz) {
        return Math.round(seconds * sampleRateHz);
    }

    private static double decaySeconds(double hz, int fret) {
        return 5.2 * Math.pow(98 / hz, 0.55) * (fret == 0 ? 1 : 0.72);
    }

    /** The pickup's voltage at the frame; frames must be asked one after the other. */
    double next(long frame) {
        while (nextStroke < strokes.length && strokes[nextStroke].frame <= frame) {
            play(strokes[nextStroke++]);
        }
        double together = 0;
        for (PluckedString string : strings) {
            together += string.arrive();
        }
        double kept = BRIDGE_LOSS * together;
        double force = 0;
        for (PluckedString string : strings) {
            force += string.leave(kept);
        }
        return pickup.next(force + click());
    }

    private void play(Stroke stroke) {
        PluckedString string = strings[stroke.string];
        if (stroke.comesDown()) {
            string.choke(stroke.restSeconds);
            return;
        }
        string.tune(stroke.hz, stroke.decaySeconds, BRIGHT_SHARE * stroke.decaySeconds, stroke.inharmonicity);
        string.pluck(stroke.strength, stroke.position, stroke.edgeSeconds);
        clickLevel += stroke.strength;
    }

    private double click() {
        if (clickLevel < 1e-9) {
            return 0;
        }
        clickLevel *= clickFade;
        clickState += clickStep * (random.nextGaussian() * clickLevel * clickScale - clickState);
        return clickState;
    }

    /** Clears what has died away. [now and then] */
    void settle() {
        for (PluckedString string : strings) {
            string.settle();
        }
        pickup.settle();
    }
}
