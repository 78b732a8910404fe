package evenwood.measure;

/**
 * All the times one note was played.
 *
 * @param midi        the note, 60 = C4
 * @param frequencyHz median pitch
 * @param count       how many times, chords and unclear ones not counted
 * @param levelDbfs   median RMS after the attack
 * @param peakDbfs    median peak
 */
public record NoteSummary(int midi, double frequencyHz, int count, double levelDbfs, double peakDbfs) {
    public String name() {
        return NoteName.of(midi);
    }
}
