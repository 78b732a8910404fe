package evenwood.measure;

import java.util.ArrayList;
import java.util.List;

/**
 * Notes of two takes set side by side: each note of the one with each of the other that is near in pitch and strength and in
 * the same part of its life.
 *
 * <p>How: weight exp(−½(semitones/1.5)²)·exp(−½(dB/6)²), nothing beyond four semitones; levels count from the middle of each
 * take, because the gain may differ. Source: our choice; checked on takes of known difference (docs/accuracy.md).
 */
final class NotePairs {
    private static final double PITCH_WIDTH_SEMITONES = 1.5;
    private static final double FURTHEST_SEMITONES = 4;
    private static final double LEVEL_WIDTH_DB = 6;
    private static final double LEAST_WEIGHT = 0.02;
    /** A band of many partials is no surer than one of three: they are alike. */
    private static final int MOST_PARTIALS = 3;

    private final List<double[]> differences = new ArrayList<>();
    private final List<double[]> weights = new ArrayList<>();
    private final List<int[]> midis = new ArrayList<>();

    NotePairs(NoteSpectraReading heard, NoteSpectraReading wanted) {
        double gainDb = middleDb(heard) - middleDb(wanted);
        for (NoteSpectrum one : heard.spectra()) {
            for (NoteSpectrum other : wanted.spectra()) {
                double semitones = one.pitchNumber() - other.pitchNumber();
                if (one.part() == other.part() && Math.abs(semitones) <= FURTHEST_SEMITONES) {
                    double level = one.levelDbfs() - other.levelDbfs() - gainDb;
                    add(one, other, Math.exp(-(square(semitones / PITCH_WIDTH_SEMITONES) + square(level / LEVEL_WIDTH_DB)) / 2));
                }
            }
        }
    }

    int count() {
        return differences.size();
    }

    /** heard − wanted of a pair, per band, with the pair's own level still in it. */
    double[] differenceDb(int pair) {
        return differences.get(pair);
    }

    /** How much each band of a pair counts, 0 where one of the notes has no partial. */
    double[] weights(int pair) {
        return weights.get(pair);
    }

    /** The note of the heard take (side 0) or of the wanted one (side 1). */
    int midi(int pair, int side) {
        return midis.get(pair)[side];
    }

    private void add(NoteSpectrum one, NoteSpectrum other, double weight) {
        if (!(weight > LEAST_WEIGHT)) {
            return;
        }
        double[] difference = new double[one.partials().length];
        double[] weightOf = new double[difference.length];
        for (int band = 0; band < difference.length; band++) {
            if (one.has(band) && other.has(band)) {
                difference[band] = one.partialDb()[band] - other.partialDb()[band];
                weightOf[band] = weight * Math.min(MOST_PARTIALS, Math.min(one.partials()[band], other.partials()[band]));
            }
        }
        differences.add(difference);
        weights.add(weightOf);
        midis.add(new int[] {one.midi(), other.midi()});
    }

    private static double middleDb(NoteSpectraReading take) {
        double[] levels = take.spectra().stream().mapToDouble(NoteSpectrum::levelDbfs).sorted().toArray();
        return levels.length == 0 ? 0 : (levels[(levels.length - 1) / 2] + levels[levels.length / 2]) / 2;
    }

    private static double square(double x) {
        return x * x;
    }
}
