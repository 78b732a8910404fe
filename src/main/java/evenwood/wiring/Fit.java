package evenwood.wiring;

/** How well two things suit each other. */
public enum Fit {
    /** Nothing to say. */
    RIGHT,
    /** It works; something is given away. */
    TOLERABLE,
    /** It does not work, or not as it should. */
    WRONG,
    /** Gear may be harmed, or a person. */
    DANGER
}
