package evenwood.sound;

import java.util.OptionalLong;

/**
 * What a decoder delivers: frames with all channels side by side.
 *
 * @param bitDepth     as in {@link SoundFormat}
 * @param lengthFrames  length of the whole file, when its header or size tells
 * @param missingFrames how many frames the header promises beyond the end of the file; 0 when it is whole or not known
 */
record FrameShape(int sampleRateHz, int channels, int bitDepth, OptionalLong lengthFrames, long missingFrames) {
    static final int MOST_CHANNELS = 64;

    /** Refuses what no meter could use, with words for the player. */
    static void check(long sampleRateHz, int channels) throws FileFault {
        if (channels < 1 || channels > MOST_CHANNELS) {
            throw new FileFault(SoundTrouble.FILE_SHAPE, "its header says channels=" + channels + ", but 1 to " + MOST_CHANNELS + " are read",
                FileFault.EXPORT_AGAIN);
        }
        if (sampleRateHz < SoundFormat.LOWEST_SAMPLE_RATE_HZ || sampleRateHz > SoundFormat.HIGHEST_SAMPLE_RATE_HZ) {
            throw new FileFault(SoundTrouble.FILE_SHAPE, "its header says sampleRateHz=" + sampleRateHz + ", but " + SoundFormat.LOWEST_SAMPLE_RATE_HZ
                + " to " + SoundFormat.HIGHEST_SAMPLE_RATE_HZ + " Hz are read", "convert it to 48000 Hz");
        }
    }
}
