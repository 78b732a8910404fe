package evenwood.takes;

/**
 * One note of a take, as asked from the bank: the truth that onset, pitch and dynamics readings are held against.
 *
 * @param startSeconds when the note is struck
 * @param endSeconds   when it is stopped; it may ring on for the voice's release
 * @param midi         note number, 69 = A4 = 440 Hz
 * @param velocity     1 to 127
 */
public record PlayedNote(double startSeconds, double endSeconds, int midi, int velocity) {
    public double frequencyHz() {
        return 440 * Math.pow(2, (midi - 69) / 12.0);
    }
}
