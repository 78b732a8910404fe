package evenwood.sound;

import javax.sound.sampled.AudioFormat;

/**
 * Turns the bytes of a line into samples: one channel out of interleaved signed integers.
 *
 * <p>In: whole frames of 8, 16, 24 or 32 significant bits, little or big-endian, packed or 24 bits in four bytes (the
 * sample then fills the lower three). Out: floats, full scale 1.0; exact up to 24 bits, 32 bits round to the nearest.
 * <p>How: value / 2^(bits−1). Own code because the usual converters shift or truncate ("platform notes": half of all 16
 * bit values do not survive one of them).
 * <p>Thread: one owner; nothing here allocates but the constructor.
 */
final class LinePcm {
    private static final float LEFT_ALIGNED_SCALE = 1f / (1L << 31);

    private final int frameBytes;
    private final int slotBytes;
    private final int significantBytes;
    private final int topByte;
    private final int nextByte;

    LinePcm(AudioFormat format) {
        frameBytes = format.getFrameSize();
        slotBytes = frameBytes / format.getChannels();
        significantBytes = format.getSampleSizeInBits() / 8;
        boolean bigEndian = format.isBigEndian();
        // In a slot wider than the sample the sample sits at the low end of the number.
        topByte = bigEndian ? slotBytes - significantBytes : significantBytes - 1;
        nextByte = bigEndian ? 1 : -1;
    }

    int frameBytes() {
        return frameBytes;
    }

    /** Writes one channel (counted from 1) of the first frames to the start of {@code out}. */
    void decode(byte[] bytes, int frames, int channel, float[] out) {
        int at = (channel - 1) * slotBytes + topByte;
        for (int i = 0; i < frames; i++, at += frameBytes) {
            out[i] = leftAligned(bytes, at) * LEFT_ALIGNED_SCALE;
        }
    }

    /** Highest minus lowest sample of one channel (counted from 1), full scale 1.0; 0 when it does not move at all. */
    float swing(byte[] bytes, int frames, int channel) {
        int at = (channel - 1) * slotBytes + topByte;
        int lowest = Integer.MAX_VALUE;
        int highest = Integer.MIN_VALUE;
        for (int i = 0; i < frames; i++, at += frameBytes) {
            int value = leftAligned(bytes, at);
            lowest = Math.min(lowest, value);
            highest = Math.max(highest, value);
        }
        return frames == 0 ? 0 : ((long) highest - lowest) * LEFT_ALIGNED_SCALE;
    }

    private int leftAligned(byte[] bytes, int top) {
        int value = 0;
        for (int k = 0, shift = 24; k < significantBytes; k++, shift -= 8) {
            value |= (bytes[top + k * nextByte] & 0xff) << shift;
        }
        return value;
    }
}
