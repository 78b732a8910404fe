package evenwood.measure;

/**
 * A steady narrow line that is no mains harmonic: a supply's whine, the 1 kHz of a computer link.
 *
 * @param frequencyHz where it stands; the centre of its power when it wanders
 * @param levelDbfs   plain RMS
 */
public record Tone(double frequencyHz, double levelDbfs) {
    public Tone {
        if (!(frequencyHz > 0) || Double.isNaN(levelDbfs)) {
            throw new IllegalArgumentException("tone: frequencyHz=" + frequencyHz + ", levelDbfs=" + levelDbfs
                + ", but the frequency must be positive and the level a number");
        }
    }
}
