package evenwood.rig;

/**
 * A box as it stands in a chain.
 *
 * @param box        what it is
 * @param gainDb     where its gain stands
 * @param padDb      the attenuation switched in, 0 for none
 * @param powered    what it is fed from: {@link Power#NONE} when it needs power and nothing is there
 * @param groundLift whether the lift is on
 */
public record PluggedBox(Box box, double gainDb, double padDb, Power powered, boolean groundLift) implements Link {
    /** Gain and pad together. */
    public double wholeGainDb() {
        return gainDb - padDb;
    }

    /** As it comes out of the bag: gain at 0 dB or the nearest to it, no pad, no lift. */
    public static PluggedBox of(Box box) {
        return new PluggedBox(box, box.gain().nearest(0), 0, box.power(), false);
    }
}
