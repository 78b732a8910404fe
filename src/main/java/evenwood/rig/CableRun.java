package evenwood.rig;

/** A cable of a certain length, as it lies there. */
public record CableRun(Cable cable, double metres) implements Link {
    static final double LONGEST_METRES = 500;
}
