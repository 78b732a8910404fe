package evenwood.rig;

/** The four families of levels that meet in a chain; a socket is made for one of them. */
public enum SignalKind {
    /** Thousandths of a volt from a low impedance, balanced. */
    MICROPHONE,
    /** Tenths of a volt, as a pickup gives them. */
    INSTRUMENT,
    /** About a volt from a low impedance. */
    LINE,
    /** Volts and amperes from a power amplifier; only for loudspeakers. */
    SPEAKER
}
