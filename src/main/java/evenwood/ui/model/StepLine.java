package evenwood.ui.model;

/**
 * One step of something the player is led through.
 *
 * @param name     in a word or two
 * @param standing whether it is done, asked for now, or to come
 * @param done     0 to 1
 */
public record StepLine(String name, Standing standing, double done) {
    /** How a step stands. */
    public enum Standing { DONE, NOW, LATER }
}
