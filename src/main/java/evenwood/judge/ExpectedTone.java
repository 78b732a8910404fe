package evenwood.judge;

import evenwood.measure.Note;
import evenwood.measure.NoteName;
import evenwood.measure.NotesReading;
import evenwood.rig.PickupColour;
import evenwood.rig.ToneTarget;
import evenwood.sound.Decibels;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The spectrum an instrument usually has when exactly these notes are played: low notes put their sound elsewhere than
 * high ones, and that is no fault of the tone.
 *
 * <p>In: a {@link ToneTarget}, the {@link NotesReading} of the take. Out: level of each band against all bands, dB.
 * <p>How: each note heard alone counts for as long as it lasted with the spectrum the target has for its pitch (between
 * two tabled pitches in proportion of their powers); how loud it was measured does not count, because the tone at fault
 * may have made it so. Chords and unclear notes count with the spectrum of usual playing, by their share of the power.
 * Source: our choice. It takes the differences that register and key make from 3 to 6 dB in each band down to
 * 1 to 3 dB (measured on takes of packaged sources).
 */
final class ExpectedTone {
    private static final double BEYOND_TABLE_SEMITONES = 1.5;

    private final ToneTarget target;
    private final double[] powers = new double[ToneTarget.BANDS];
    private double aloneEnergy;
    private double otherEnergy;

    private ExpectedTone(ToneTarget target) {
        this.target = target;
    }

    /** Band levels against all bands together, lowest band first. @param colour what the pickup adds */
    static double[] levelsDb(ToneTarget target, NotesReading notes, Optional<PickupColour> colour) {
        ExpectedTone expected = new ExpectedTone(target);
        notes.notes().forEach(expected::add);
        double[] levels = expected.levelsDb();
        return colour.map(each -> through(each, levels)).orElse(levels);
    }

    private static double[] through(PickupColour colour, double[] levels) {
        double[] powers = new double[levels.length];
        for (int band = 0; band < levels.length; band++) {
            powers[band] = Decibels.toPower(levels[band] + colour.levelDb().get(band));
        }
        double whole = sum(powers);
        return Arrays.stream(powers).map(power -> Decibels.ofPower(power / whole)).toArray();
    }

    private void add(Note note) {
        double seconds = note.endSeconds() - note.startSeconds();
        double energy = seconds * Decibels.toPower(note.levelDbfs());
        if (note.polyphonic() || note.midi() == NoteName.NONE || !inTable(note.frequencyHz())) {
            otherEnergy += energy;
            return;
        }
        aloneEnergy += energy;
        double number = NoteName.number(note.frequencyHz());
        List<ToneTarget.NoteTone> table = target.notes();
        int above = 0;
        while (above < table.size() - 1 && table.get(above).frequencyHz() < note.frequencyHz()) {
            above++;
        }
        int below = Math.max(0, above - 1);
        double from = NoteName.number(table.get(below).frequencyHz());
        double to = NoteName.number(table.get(above).frequencyHz());
        double part = to == from ? 0 : Math.max(0, Math.min(1, (number - from) / (to - from)));
        addPowers(table.get(below).levelDb(), seconds * (1 - part));
        addPowers(table.get(above).levelDb(), seconds * part);
    }

    private boolean inTable(double frequencyHz) {
        List<ToneTarget.NoteTone> table = target.notes();
        return !table.isEmpty()
            && NoteName.number(frequencyHz) > NoteName.number(table.get(0).frequencyHz()) - BEYOND_TABLE_SEMITONES
            && NoteName.number(frequencyHz) < NoteName.number(table.get(table.size() - 1).frequencyHz()) + BEYOND_TABLE_SEMITONES;
    }

    private void addPowers(List<Double> levelsDb, double weight) {
        for (int band = 0; band < powers.length; band++) {
            powers[band] += weight * Decibels.toPower(levelsDb.get(band));
        }
    }

    private double[] levelsDb() {
        double alone = sum(powers);
        double aloneShare = alone == 0 ? 0 : aloneEnergy == 0 && otherEnergy == 0 ? 1 : aloneEnergy / (aloneEnergy + otherEnergy);
        double[] usual = target.levelDb().stream().mapToDouble(Decibels::toPower).toArray();
        double[] levels = new double[powers.length];
        double whole = sum(usual);
        for (int band = 0; band < levels.length; band++) {
            double power = (1 - aloneShare) * usual[band] / whole + (alone == 0 ? 0 : aloneShare * powers[band] / alone);
            levels[band] = Decibels.ofPower(power);
        }
        return levels;
    }

    private static double sum(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum;
    }
}
