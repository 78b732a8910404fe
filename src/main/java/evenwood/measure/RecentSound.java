package evenwood.measure;

import evenwood.sound.AudioBlock;

/**
 * The newest stretch of the sound, at least so many seconds, by frame of the take.
 *
 * <p>Thread: one owner; only the constructor allocates.
 */
final class RecentSound {
    private final float[] ring;
    private final int mask;
    private long endFrame;

    RecentSound(int sampleRateHz, double seconds) {
        int frames = Integer.highestOneBit((int) Math.ceil(seconds * sampleRateHz) - 1) << 1;
        ring = new float[frames];
        mask = frames - 1;
    }

    /** Takes in frames of a block; no more than half the room at a time keeps the other half readable. */
    void append(AudioBlock block, int from, int frames) {
        int at = (int) (endFrame & mask);
        int first = Math.min(frames, ring.length - at);
        System.arraycopy(block.samples(), from, ring, at, first);
        System.arraycopy(block.samples(), from + first, ring, 0, frames - first);
        endFrame += frames;
    }

    float get(long frame) {
        return ring[(int) (frame & mask)];
    }

    /** One past the newest frame. */
    long endFrame() {
        return endFrame;
    }

    long firstFrame() {
        return Math.max(0, endFrame - ring.length);
    }

    void reset() {
        endFrame = 0;
    }
}
