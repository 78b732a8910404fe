package evenwood.eq;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * One stage of a plain parametric equaliser that stands flat: what the advice is for when no rig is known.
 *
 * <p>Ranges, our choice from what full parametric equalisers have: ±{@value #MOST_DB} dB, 40 Hz to 16 kHz, Q 0.4 to 8;
 * shelves of slope 1 from 60 Hz to 1 kHz and from 800 Hz to 12 kHz; a second-order high-pass from 30 to 300 Hz. Settable are
 * half decibels, frequencies of two figures and the Qs that such equalisers print.
 */
final class FreeStage implements Knob {
    static final double MOST_DB = 15;
    private static final double[] START_GAINS_DB = {-12, -8, -5, -2.5, 2.5, 5, 8, 12};
    private static final double[] START_QS = {0.5, 0.7, 1, 1.4, 2, 3, 5};
    private static final double[] QS = {0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.4, 1.7, 2, 2.5, 3, 3.5, 4, 5, 6, 7, 8};
    private static final double START_OCTAVES = 1.0 / 6;
    private static final double STEP_DB = 0.5;

    private final FilterKind kind;
    private final double lowHz;
    private final double highHz;
    private final BandResponse response;
    private List<double[]> starts;
    private List<double[]> startEffects;

    private FreeStage(FilterKind kind, double lowHz, double highHz, BandResponse response) {
        this.kind = kind;
        this.lowHz = lowHz;
        this.highHz = Math.min(highHz, 0.45 * response.sampleRateHz());
        this.response = response;
    }

    /** High-pass, shelves and so many peaks. */
    static List<Knob> equaliser(int peaks, BandResponse response) {
        List<Knob> knobs = new ArrayList<>();
        knobs.add(new FreeStage(FilterKind.HIGH_PASS, 30, 300, response));
        knobs.add(new FreeStage(FilterKind.LOW_SHELF, 60, 1000, response));
        knobs.add(new FreeStage(FilterKind.HIGH_SHELF, 800, 12_000, response));
        FreeStage first = new FreeStage(FilterKind.PEAK, 40, 16_000, response);
        for (int i = 0; i < peaks; i++) {
            FreeStage peak = i == 0 ? first : new FreeStage(FilterKind.PEAK, 40, 16_000, response);
            peak.starts = first.starts(); // all alike: worked out once
            peak.startEffects = first.startEffectsDb();
            knobs.add(peak);
        }
        return knobs;
    }

    boolean isLike(FreeStage other) {
        return kind == other.kind;
    }

    @Override
    public Object control() {
        return this;
    }

    @Override
    public double[] least() {
        return range(lowHz, -MOST_DB, QS[0]);
    }

    @Override
    public double[] most() {
        return range(highHz, MOST_DB, QS[QS.length - 1]);
    }

    private double[] range(double hz, double gainDb, double q) {
        return switch (kind) {
            case HIGH_PASS -> new double[] {log2(hz)};
            case PEAK -> new double[] {log2(hz), gainDb, log2(q)};
            default -> new double[] {log2(hz), gainDb};
        };
    }

    @Override
    public List<double[]> starts() {
        if (starts == null) {
            starts = new ArrayList<>();
            double[] qs = kind == FilterKind.PEAK ? START_QS : new double[] {EqFilter.BUTTERWORTH_Q};
            double[] gains = kind == FilterKind.HIGH_PASS ? new double[] {0} : START_GAINS_DB;
            for (double octave = log2(lowHz); octave <= log2(highHz); octave += START_OCTAVES) {
                for (double q : qs) {
                    for (double gain : gains) {
                        starts.add(range(Math.pow(2, octave), gain, q));
                    }
                }
            }
        }
        return starts;
    }

    @Override
    public List<double[]> startEffectsDb() {
        if (startEffects == null) {
            startEffects = Knob.super.startEffectsDb();
        }
        return startEffects;
    }

    @Override
    public double[] effectDb(double[] place) {
        return response.db(filter(place));
    }

    EqFilter filter(double[] place) {
        double hz = Math.pow(2, place[0]);
        return switch (kind) {
            case HIGH_PASS -> EqFilter.highPass(hz, 2);
            case PEAK -> EqFilter.peak(hz, Math.pow(2, place[2]), place[1]);
            case LOW_SHELF -> EqFilter.lowShelf(hz, EqFilter.BUTTERWORTH_Q, place[1]);
            default -> EqFilter.highShelf(hz, EqFilter.BUTTERWORTH_Q, place[1]);
        };
    }

    @Override
    public double[] settable(double[] place) {
        double[] settable = place.clone();
        settable[0] = log2(roundFrequency(Math.pow(2, place[0])));
        if (place.length > 1) {
            settable[1] = Math.max(-MOST_DB, Math.min(MOST_DB, Math.rint(place[1] / STEP_DB) * STEP_DB));
        }
        if (place.length > 2) {
            settable[2] = log2(QS[nearestQ(Math.pow(2, place[2]))]);
        }
        return settable;
    }

    @Override
    public List<double[]> nextTo(double[] place) {
        List<double[]> next = new ArrayList<>();
        double hz = Math.pow(2, place[0]);
        for (double factor : new double[] {1 / 1.05, 1.05, 1 / 1.12, 1.12}) {
            double moved = roundFrequency(hz * factor);
            if (moved >= lowHz && moved <= highHz) {
                next.add(with(place, 0, log2(moved)));
            }
        }
        if (place.length > 1) {
            for (double step : new double[] {-STEP_DB, STEP_DB}) {
                if (Math.abs(place[1] + step) <= MOST_DB) {
                    next.add(with(place, 1, place[1] + step));
                }
            }
        }
        if (place.length > 2) {
            int q = nearestQ(Math.pow(2, place[2]));
            for (int other = Math.max(0, q - 1); other <= Math.min(QS.length - 1, q + 1); other++) {
                next.add(with(place, 2, log2(QS[other])));
            }
        }
        return next;
    }

    @Override
    public Turn turn(double[] place, Turn.Figures figures) {
        EqFilter exact = filter(place);
        double hz = roundFrequency(exact.frequencyHz());
        double q = kind == FilterKind.PEAK ? QS[nearestQ(exact.q())] : exact.q();
        return new Turn(Optional.empty(), Optional.empty(),
            EqChain.of(new EqFilter(kind, hz, q, exact.gainDb(), exact.order())), figures);
    }

    /** Two figures, steps of a twentieth under 2: 85, 90, 105, 420, 1250. */
    static double roundFrequency(double hz) {
        double decade = Math.pow(10, Math.floor(Math.log10(hz)));
        double step = hz / decade < 2 ? 0.05 : 0.1;
        return Math.rint(hz / decade / step) * step * decade;
    }

    private static int nearestQ(double q) {
        int best = 0;
        for (int i = 1; i < QS.length; i++) {
            if (Math.abs(Math.log(QS[i] / q)) < Math.abs(Math.log(QS[best] / q))) {
                best = i;
            }
        }
        return best;
    }

    private static double[] with(double[] place, int dial, double value) {
        double[] changed = Arrays.copyOf(place, place.length);
        changed[dial] = value;
        return changed;
    }

    private static double log2(double x) {
        return Math.log(x) / Math.log(2);
    }
}
