package evenwood.rig;

import java.util.List;

/**
 * What a kind of pickup adds to an instrument's sound, or takes from it: heard through it − heard by a good microphone a step away,
 * before cable and input. What the wiring does (resonance with the cable, lost bass) is not in it.
 *
 * @param basis    how sure it is
 * @param howMade  in words
 * @param levelDb  third octaves from 50 Hz to 16 kHz, lowest first; a level common to all does not matter
 * @param spreadDb standard deviation of one pickup of the kind from the next, and from its place on the instrument
 */
public record PickupColour(Basis basis, String howMade, List<Double> levelDb, double spreadDb) {
    /** No more, no less: neither is measured by us. */
    public enum Basis { COMMON_PRACTICE, ESTIMATE }

    public PickupColour {
        levelDb = List.copyOf(levelDb);
    }

    static PickupColour read(YamlFields fields) {
        PickupColour colour = new PickupColour(fields.choice("basis", Basis.class), fields.text("howMade"),
            fields.numbers("levelDb", -40, 40, "dB"), fields.number("spreadDb", 0, 20, "dB"));
        if (colour.levelDb.size() != ToneTarget.BANDS) {
            throw fields.wrong("levelDb", colour.levelDb.size() + " numbers", ToneTarget.BANDS + " are needed, third octaves from 50 Hz to 16 kHz");
        }
        fields.nothingElse();
        return colour;
    }
}
