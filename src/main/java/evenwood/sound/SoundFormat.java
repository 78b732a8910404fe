package evenwood.sound;

/**
 * What kind of samples a source delivers.
 *
 * @param sampleRateHz 8000 to 192000
 * @param channels     how many channels the source has, 1 or more; a block carries one of them
 * @param channel      the one that is heard, counted from 1
 * @param bitDepth     bits of an integer sample (8, 16, 24, 32), or 0 for floating point or a lossy codec, where no
 *                     code is the highest
 */
public record SoundFormat(int sampleRateHz, int channels, int channel, int bitDepth) {
    public static final int LOWEST_SAMPLE_RATE_HZ = 8_000;
    public static final int HIGHEST_SAMPLE_RATE_HZ = 192_000;

    public SoundFormat {
        if (sampleRateHz < LOWEST_SAMPLE_RATE_HZ || sampleRateHz > HIGHEST_SAMPLE_RATE_HZ) {
            throw new IllegalArgumentException("sound format: sampleRateHz=" + sampleRateHz + ", but "
                + LOWEST_SAMPLE_RATE_HZ + " to " + HIGHEST_SAMPLE_RATE_HZ + " are supported");
        }
        if (channels < 1 || channel < 1 || channel > channels) {
            throw new IllegalArgumentException("sound format: channel=" + channel + ", but the sound has channels 1 to "
                + channels);
        }
        if (bitDepth < 0 || bitDepth > 32) {
            throw new IllegalArgumentException("sound format: bitDepth=" + bitDepth + ", but 0 (float) to 32 are possible");
        }
    }

    public static SoundFormat mono(int sampleRateHz) {
        return new SoundFormat(sampleRateHz, 1, 1, 0);
    }

    /** The highest positive sample an integer format can carry, 1 − 2^−(bits−1); 1.0 for float. */
    public double positiveFullScale() {
        return bitDepth == 0 ? 1.0 : 1.0 - Math.pow(2, 1 - bitDepth);
    }
}
