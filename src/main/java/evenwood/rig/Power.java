package evenwood.rig;

/** What a piece of gear lives on. */
public enum Power {
    NONE, BATTERY, PHANTOM, BATTERY_OR_PHANTOM, MAINS;

    public boolean takesPhantom() {
        return this == PHANTOM || this == BATTERY_OR_PHANTOM;
    }

    public boolean takesBattery() {
        return this == BATTERY || this == BATTERY_OR_PHANTOM;
    }
}
