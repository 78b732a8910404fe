package evenwood.takes;

import evenwood.coach.Assessment;
import evenwood.coach.Coach;
import evenwood.judge.TargetWindow;
import evenwood.measure.TakeMeters;
import evenwood.measure.TakeReadings;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundFormat;

/** Lets all meters hear an array of samples, as a check of a file would. */
public final class Heard {
    private static final int BLOCK_FRAMES = 4096;

    private Heard() { }

    public static TakeReadings readings(float[] samples, SoundFormat format) {
        TakeMeters meters = new TakeMeters(format, (double) samples.length / format.sampleRateHz());
        AudioBlock block = new AudioBlock(BLOCK_FRAMES);
        for (int start = 0; start < samples.length; start += BLOCK_FRAMES) {
            int frames = Math.min(BLOCK_FRAMES, samples.length - start);
            System.arraycopy(samples, start, block.samples(), 0, frames);
            block.set(start, frames);
            meters.accept(block);
        }
        return meters.readingsOfFinishedTake("take");
    }

    /** The same, judged and coached. */
    public static Assessment assessment(float[] samples, SoundFormat format) {
        return new Coach(TargetWindow.DEFAULT).assess(readings(samples, format));
    }
}
