package evenwood.takes;

/**
 * How hard a phrase is played, as MIDI velocities.
 *
 * <p>By the SoundFont 2.01 default modulator (concave, 960 cB) level goes about with 40·lg(velocity/127): soft is some
 * 14 to 20 dB under hard and usual some 6 to 8 dB, as wide as a player's own hands.
 */
public enum Dynamics {
    SOFT(38, 52), USUAL(68, 84), HARD(106, 122);

    private final int lowestVelocity;
    private final int highestVelocity;

    Dynamics(int lowestVelocity, int highestVelocity) {
        this.lowestVelocity = lowestVelocity;
        this.highestVelocity = highestVelocity;
    }

    public int lowestVelocity() {
        return lowestVelocity;
    }

    public int highestVelocity() {
        return highestVelocity;
    }
}
