package evenwood.measure;

/**
 * One note, or one chord struck at once.
 *
 * @param startSeconds when it was struck or the bow took hold, in the take
 * @param endSeconds   when the next one began or it fell silent
 * @param frequencyHz  its pitch; 0 when it has none that is clear
 * @param midi         the nearest note, 60 = C4; {@link NoteName#NONE} without a pitch
 * @param clarity      0 to 1: how periodic it was, 1 for a perfect single tone
 * @param polyphonic   several notes sounded, or none that is clear; the pitch is then a guess at best
 * @param peakDbfs     highest sample of the note, at the tap
 * @param levelDbfs    RMS once the attack is over (80 to 400 ms after the start, or what there is)
 */
public record Note(double startSeconds, double endSeconds, double frequencyHz, int midi, double clarity, boolean polyphonic,
                   double peakDbfs, double levelDbfs) {
    public Note {
        if (Double.isNaN(frequencyHz) || Double.isNaN(clarity) || Double.isNaN(peakDbfs) || Double.isNaN(levelDbfs)) {
            throw new IllegalArgumentException("note: frequencyHz=" + frequencyHz + ", clarity=" + clarity + ", peakDbfs="
                + peakDbfs + ", levelDbfs=" + levelDbfs + ", but all must be numbers (−Infinity for silence)");
        }
    }

    /** "A4", or the empty text without a pitch. */
    public String name() {
        return NoteName.of(midi);
    }

    /** How far its pitch lies above the nearest note; 0 without a pitch. */
    public double cents() {
        return midi == NoteName.NONE ? 0 : NoteName.cents(frequencyHz, NoteName.frequencyHz(midi));
    }
}
