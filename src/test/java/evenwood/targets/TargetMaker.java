package evenwood.targets;

import evenwood.rig.Instrument;
import evenwood.rig.Presets;
import evenwood.rig.ToneTarget;
import evenwood.sound.Decibels;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * Makes an instrument's target of how independent sources sound: the mean of their levels in dB, note by note.
 *
 * <p>Spread: two to four sources are too few to tell how much one instrument's own bands scatter, so one law is fitted to
 * all instruments together (maximum likelihood, once, by a script that is not kept; docs/targets.md says how): {@value #SPREAD_DB} dB, and {@value #SPREAD_PER_DB} dB more for every dB that
 * the band lies under {@value #SPREAD_FROM_DB} dB against all bands. Tolerance: as far as one instrument in three lies
 * off, at most {@value #WIDEST_TOLERANCE_DB} dB; our choice.
 */
final class TargetMaker {
    static final double SPREAD_DB = 3.9;
    static final double SPREAD_PER_DB = 0.2;
    static final double SPREAD_FROM_DB = -3.4;
    private static final double WIDEST_TOLERANCE_DB = 12;
    /** Usual playing lies about an octave over the lowest note: weights of a bell this many semitones wide; our choice. */
    private static final double USUAL_ABOVE_LOWEST_SEMITONES = 12;
    private static final double USUAL_WIDTH_SEMITONES = 9;

    private TargetMaker() { }

    static ToneTarget target(List<List<ToneTarget.NoteTone>> sources, ToneTarget.Basis basis, String howMade) {
        List<ToneTarget.NoteTone> notes = normalised(average(sources, level -> level, level -> level));
        List<Double> usual = usualDb(notes);
        return of(basis, sources.size(), howMade, usual, notes);
    }

    /** For an instrument without pitch. */
    static ToneTarget unpitched(List<List<Double>> sources, ToneTarget.Basis basis, String howMade) {
        List<Double> usual = new ArrayList<>();
        for (int band = 0; band < ToneTarget.BANDS; band++) {
            int at = band;
            usual.add(sources.stream().mapToDouble(source -> source.get(at)).average().orElseThrow());
        }
        return of(basis, sources.size(), howMade, relative(usual), List.of());
    }

    private static ToneTarget of(ToneTarget.Basis basis, int sources, String howMade, List<Double> usual, List<ToneTarget.NoteTone> notes) {
        List<Double> spread = usual.stream().map(level -> SPREAD_DB + SPREAD_PER_DB * Math.max(0, SPREAD_FROM_DB - level)).toList();
        List<Double> tolerance = spread.stream().map(each -> Math.min(WIDEST_TOLERANCE_DB, each)).toList();
        return new ToneTarget(basis, sources, howMade, usual, spread, tolerance, notes);
    }

    /** The instrument preset with another target. */
    static Instrument instrument(String id, ToneTarget target) {
        Instrument preset = new Presets(Path.of("no-folder-of-a-player")).instrument(id);
        return new Instrument(preset.id(), preset.name(), preset.played(), preset.lowestHz(), preset.highestHz(), preset.courses(),
            preset.source(), Optional.of(target));
    }

    /** All rows against the mean power of a row. */
    static List<ToneTarget.NoteTone> normalised(List<ToneTarget.NoteTone> rows) {
        double power = rows.stream().flatMap(row -> row.levelDb().stream()).mapToDouble(Decibels::toPower).sum() / rows.size();
        double offDb = Decibels.ofPower(power);
        return rows.stream().map(row -> new ToneTarget.NoteTone(row.frequencyHz(),
            row.levelDb().stream().map(level -> level - offDb).toList())).toList();
    }

    static List<ToneTarget.NoteTone> averagePower(List<List<ToneTarget.NoteTone>> tables) {
        return average(tables, Decibels::toPower, Decibels::ofPower);
    }

    private static List<ToneTarget.NoteTone> average(List<List<ToneTarget.NoteTone>> tables, DoubleUnaryOperator into, DoubleUnaryOperator back) {
        List<ToneTarget.NoteTone> rows = new ArrayList<>();
        int common = tables.stream().mapToInt(List::size).min().orElseThrow();
        for (int row = 0; row < common; row++) {
            List<Double> levels = new ArrayList<>();
            for (int band = 0; band < ToneTarget.BANDS; band++) {
                double sum = 0;
                for (List<ToneTarget.NoteTone> table : tables) {
                    sum += into.applyAsDouble(table.get(row).levelDb().get(band)) / tables.size();
                }
                levels.add(back.applyAsDouble(sum));
            }
            rows.add(new ToneTarget.NoteTone(tables.get(0).get(row).frequencyHz(), levels));
        }
        return rows;
    }

    static List<Double> usualDb(List<ToneTarget.NoteTone> notes) {
        double[] powers = new double[ToneTarget.BANDS];
        double lowest = semitones(notes.get(0).frequencyHz());
        for (ToneTarget.NoteTone note : notes) {
            double away = (semitones(note.frequencyHz()) - lowest - USUAL_ABOVE_LOWEST_SEMITONES) / USUAL_WIDTH_SEMITONES;
            for (int band = 0; band < powers.length; band++) {
                powers[band] += Math.exp(-away * away) * Decibels.toPower(note.levelDb().get(band));
            }
        }
        List<Double> levels = new ArrayList<>();
        for (double power : powers) {
            levels.add(Decibels.ofPower(power));
        }
        return relative(levels);
    }

    private static List<Double> relative(List<Double> levels) {
        double whole = Decibels.ofPower(levels.stream().mapToDouble(Decibels::toPower).sum());
        return levels.stream().map(level -> level - whole).toList();
    }

    private static double semitones(double frequencyHz) {
        return 12 * Math.log(frequencyHz) / Math.log(2);
    }
}
