package evenwood.measure;

/**
 * The pitch sounding now, for a tuner.
 *
 * @param frequencyHz 0 when nothing clear sounds
 * @param midi        the nearest note, or {@link NoteName#NONE}
 * @param cents       how far above it, −50 to 50
 * @param clarity     0 to 1
 */
public record PitchReading(double frequencyHz, int midi, double cents, double clarity) {
    public static final PitchReading NONE = new PitchReading(0, NoteName.NONE, 0, 0);

    static PitchReading of(double frequencyHz, double clarity) {
        if (frequencyHz <= 0) {
            return NONE;
        }
        int midi = NoteName.nearest(frequencyHz);
        return new PitchReading(frequencyHz, midi, NoteName.cents(frequencyHz, NoteName.frequencyHz(midi)), clarity);
    }

    public String name() {
        return NoteName.of(midi);
    }
}
