package evenwood.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How the tone of one take differs from that of another on the same instrument, whatever was played.
 *
 * <p>In: the {@link NoteSpectraReading}s of both. Out: {@link ToneDifference}, heard − wanted, bands nobody can say anything
 * about left out; a level common to all bands is taken off.
 * <p>How: {@link NotePairs} compare like with like, {@link PairFit} finds what all pairs have in common. Uncertainty: the
 * jackknife over the notes of each take (Efron and Tibshirani 1993, ch. 11, from memory), plus what few notes of other
 * pitch leave.
 * <p>Limits: bands no two notes share, or known to no better than 6 dB, are left out of the note-by-note comparison; see {@link TopBands}. Different instruments, strings or
 * plucking places count as tone, as they should.
 */
public final class NotewiseDifference {
    /** About the smallest change of a wide band that is noticed; reference §12.3. */
    static final double TOLERANCE_DB = 1;
    /**
     * What is left in a band that rests on one note, on two, on more. Fitted on tuning sources (docs/accuracy.md) to 4, 2.4 and
     * 0.6 dB; a quarter more for one and two, because a wrongly heard note is no rare thing.
     */
    private static final double[] NOTES_DEVIATION_DB = {Double.POSITIVE_INFINITY, 5, 3, 0.6};
    private static final double DEVIATIONS_95 = 1.96;
    /** The jackknife counts each note on both sides; tuning sources would bear 0.62, errors have long tails (docs/accuracy.md). */
    private static final double PART_OF_JACKKNIFE = 0.8;
    private static final int ROUNDS = 12;
    private static final int JACKKNIFE_ROUNDS = 4;
    private static final double CARRIES = 0.02;
    private static final double LARGEST_DEVIATION_DB = 6;

    /** No tone control moves a third octave by so much against the rest; a wrongly heard note does. */
    private static final double LARGEST_OF_FEW_NOTES_DB = 15;
    private static final int FEW_NOTES = 3;

    private final NotePairs pairs;
    private final int bands = ThirdOctave.FROM_50_HZ_TO_16_KHZ.size();
    private final double[] differenceDb;
    private final double[] varianceDb = new double[bands];
    private final int[] notes = new int[bands];

    private NotewiseDifference(NotePairs pairs) {
        this.pairs = pairs;
        PairFit fit = new PairFit(pairs, bands);
        differenceDb = fit.differenceDb(new double[bands], ROUNDS, 0, Integer.MIN_VALUE);
        Arrays.fill(notes, Integer.MAX_VALUE);
        for (int side = 0; side < 2; side++) {
            jackknife(fit, side);
        }
    }

    /** Note by note, and above the highest partials by the average spectra. */
    public static ToneDifference between(TakeReadings heard, TakeReadings wanted) {
        return TopBands.added(between(heard.noteSpectra(), wanted.noteSpectra()), heard.spectrum(), wanted.spectrum());
    }

    public static ToneDifference between(NoteSpectraReading heard, NoteSpectraReading wanted) {
        return new NotewiseDifference(new NotePairs(heard, wanted)).difference();
    }

    private void jackknife(PairFit fit, int side) {
        int[] midis = midis(side);
        double[] total = weight(side, Integer.MIN_VALUE);
        int[] carrying = new int[bands];
        double[] squares = new double[bands];
        for (int midi : midis) {
            double[] own = weight(side, midi);
            double[] change = fit.differenceDb(differenceDb, JACKKNIFE_ROUNDS, side, midi);
            double shift = 0;
            double weights = 0;
            for (int band = 0; band < bands; band++) {
                change[band] -= differenceDb[band];
                shift += total[band] * change[band];
                weights += total[band];
            }
            for (int band = 0; band < bands; band++) {
                carrying[band] += own[band] > CARRIES * total[band] ? 1 : 0;
                squares[band] += square(change[band] - shift / Math.max(1e-12, weights));
            }
        }
        for (int band = 0; band < bands; band++) {
            notes[band] = Math.min(notes[band], carrying[band]);
            varianceDb[band] += carrying[band] < 2 ? 0 : squares[band] * (carrying[band] - 1) / carrying[band];
        }
    }

    private int[] midis(int side) {
        int[] all = new int[pairs.count()];
        for (int pair = 0; pair < all.length; pair++) {
            all[pair] = pairs.midi(pair, side);
        }
        return Arrays.stream(all).distinct().sorted().toArray();
    }

    /** Per band what the pairs with a note weigh; all pairs for a note that is none. */
    private double[] weight(int side, int midi) {
        double[] sums = new double[bands];
        for (int pair = 0; pair < pairs.count(); pair++) {
            if (midi == Integer.MIN_VALUE || pairs.midi(pair, side) == midi) {
                for (int band = 0; band < bands; band++) {
                    sums[band] += pairs.weights(pair)[band];
                }
            }
        }
        return sums;
    }

    private ToneDifference difference() {
        double sum = 0;
        double weights = 0;
        for (int band = 0; band < bands; band++) {
            varianceDb[band] += square(NOTES_DEVIATION_DB[Math.min(notes[band], NOTES_DEVIATION_DB.length - 1)]);
            double weight = 1 / (1 + varianceDb[band]);
            sum += weight * differenceDb[band];
            weights += weight;
        }
        List<ToneDifference.Band> found = new ArrayList<>();
        for (int band = 0; band < bands; band++) {
            boolean wronglyHeard = notes[band] < FEW_NOTES && Math.abs(differenceDb[band] - sum / weights) > LARGEST_OF_FEW_NOTES_DB;
            if (Math.sqrt(varianceDb[band]) <= LARGEST_DEVIATION_DB && !wronglyHeard) {
                found.add(new ToneDifference.Band(ThirdOctave.FROM_50_HZ_TO_16_KHZ.get(band), differenceDb[band] - sum / weights,
                    DEVIATIONS_95 * PART_OF_JACKKNIFE * Math.sqrt(varianceDb[band]), TOLERANCE_DB, 1));
            }
        }
        return new ToneDifference(found);
    }

    private static double square(double x) {
        return x * x;
    }
}
