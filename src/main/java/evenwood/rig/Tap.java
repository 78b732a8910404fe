package evenwood.rig;

/**
 * The point in the chain where we listen.
 *
 * <p>Straight from the pickup, an amp's line out and a mixer's direct out tell the sound of the rig itself. A microphone
 * before the speaker adds its own response and the room's, so absolute targets hold only loosely there.
 */
public enum Tap {
    PICKUP, AMP_LINE_OUT, MIXER_DIRECT_OUT, MICROPHONE;

    /** Whether microphone and room stand between the rig and us. */
    public boolean hearsTheRoom() {
        return this == MICROPHONE;
    }
}
