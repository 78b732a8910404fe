package evenwood.takes;

/** What is played in one phrase. */
public enum PhraseKind {
    SCALE, ARPEGGIO, STRUM, MELODY, LONG_NOTES
}
