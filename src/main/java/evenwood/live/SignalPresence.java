package evenwood.live;

import evenwood.sound.AudioBlock;

/**
 * Tells an input that delivers nothing from a player who is quiet.
 *
 * <p>In: mono blocks of any size. Out: {@link SignalReading}.
 * <p>How: any converter's own noise moves at least the last bit now and then, so 1.5 s of exactly one value never come
 * from a live input. A single different sample ends it. Source: our choice; 1.5 s leaves half a second of the two in
 * which the player must be told, and is longer than a noise gate's usual rest between notes.
 * <p>Limits: a gate or a muted desk that sends digital silence reads as zeros too: that is what it is.
 * <p>Thread: one owner. {@link #accept} never allocates while the kind stays the same, and never locks or logs.
 */
public final class SignalPresence {
    static final double TOLD_AFTER_SECONDS = 1.5;

    private final long toldAfterFrames;
    private float last;
    private long sameFrames;
    private SignalReading reading = SignalReading.NOT_YET_KNOWN;

    public SignalPresence(int sampleRateHz) {
        toldAfterFrames = Math.round(TOLD_AFTER_SECONDS * sampleRateHz);
    }

    /** Hears one block and keeps none of it. [analysis thread] */
    public void accept(AudioBlock block) {
        float[] samples = block.samples();
        for (int i = 0; i < block.frames(); i++) {
            if (samples[i] == last && sameFrames > 0) {
                sameFrames++;
            } else {
                moved(samples[i]);
            }
        }
        if (sameFrames >= toldAfterFrames && !reading.isDead()) {
            reading = last == 0 ? SignalReading.EXACT_ZEROS : new SignalReading(SignalReading.Kind.STUCK, last);
        }
    }

    /** What has been heard so far. [owner's thread] */
    public SignalReading reading() {
        return reading;
    }

    public void reset() {
        sameFrames = 0;
        reading = SignalReading.NOT_YET_KNOWN;
    }

    private void moved(float sample) {
        if (sameFrames > 0) {
            reading = SignalReading.ALIVE;
        }
        last = sample;
        sameFrames = 1;
    }
}
