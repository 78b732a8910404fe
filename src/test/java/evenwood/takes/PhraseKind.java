package evenwood.takes;

/** What is played in one phrase. */
public enum PhraseKind {
    SCALE, ARPEGGIO, STRUM, MELODY, LONG_NOTES,
    /** Within the lowest octave, and within the highest that lies well under the hand: for telling register from tone. */
    LOW_MELODY, HIGH_MELODY,
    /** Every semitone from the lowest string to the highest note: for learning how each note sounds. */
    CHROMATIC
}
