package evenwood.rig;

import java.util.ArrayList;
import java.util.List;

/**
 * How an instrument usually sounds, in third octaves from 50 Hz to 16 kHz ({@value #BANDS} numbers, lowest first).
 *
 * @param basis       whether its own sound was heard or a relative's
 * @param sources     how many independent sets of recordings it rests on
 * @param howMade     in words
 * @param levelDb     usual playing over the lower and middle range, each band against all bands together
 * @param spreadDb    standard deviation of one instrument (and its recording) from the next, once level is left out
 * @param toleranceDb up to so far off the tone is as usual as the next instrument's
 * @param notes       how single notes sound, by pitch, lowest first; empty where there is no pitch
 */
public record ToneTarget(Basis basis, int sources, String howMade, List<Double> levelDb, List<Double> spreadDb,
                         List<Double> toleranceDb, List<NoteTone> notes) {
    public static final int BANDS = 26;
    private static final double LOWEST_DB = -150;

    /** Whose sound it is made of. */
    public enum Basis { OWN_SOUND, RELATIVES }

    /**
     * The sound of one note.
     *
     * @param frequencyHz its pitch
     * @param levelDb     band levels against the power of an average note of the table, so that louder notes count for more
     */
    public record NoteTone(double frequencyHz, List<Double> levelDb) {
        public NoteTone {
            levelDb = List.copyOf(levelDb);
        }
    }

    public ToneTarget {
        levelDb = List.copyOf(levelDb);
        spreadDb = List.copyOf(spreadDb);
        toleranceDb = List.copyOf(toleranceDb);
        notes = List.copyOf(notes);
    }

    static ToneTarget read(YamlFields fields) {
        ToneTarget target = new ToneTarget(fields.choice("basis", Basis.class), (int) fields.number("sources", 1, 100, "sets of recordings"),
            fields.text("howMade"), bands(fields, "levelDb", LOWEST_DB, 20), bands(fields, "spreadDb", 0, 60),
            bands(fields, "toleranceDb", 0, 60), notes(fields));
        fields.nothingElse();
        return target;
    }

    private static List<NoteTone> notes(YamlFields fields) {
        List<NoteTone> notes = new ArrayList<>();
        for (YamlFields note : fields.parts("notes")) {
            NoteTone tone = new NoteTone(note.number("frequencyHz", 16, 5000, "Hz"), bands(note, "levelDb", LOWEST_DB, 40));
            note.nothingElse();
            if (!notes.isEmpty() && tone.frequencyHz <= notes.get(notes.size() - 1).frequencyHz) {
                throw note.wrong("frequencyHz", String.valueOf(tone.frequencyHz), "notes must rise");
            }
            notes.add(tone);
        }
        return notes;
    }

    private static List<Double> bands(YamlFields fields, String field, double least, double most) {
        List<Double> bands = fields.numbers(field, least, most, "dB");
        if (bands.size() != BANDS) {
            throw fields.wrong(field, bands.size() + " numbers", BANDS + " are needed, third octaves from 50 Hz to 16 kHz");
        }
        return bands;
    }
}
