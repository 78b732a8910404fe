package evenwood.eq;

/** The shapes an equaliser stage can have; words of the audio EQ cookbook. */
public enum FilterKind { LOW_SHELF, HIGH_SHELF, PEAK, HIGH_PASS, LOW_PASS, NOTCH }
