package evenwood.measure;

import evenwood.sound.AudioBlock;
import java.util.Arrays;

/** Everything of the noise that a take is asked for, heard as the program hears it: playing or quiet is found, not given. */
record NoiseListening(ActivityReading activity, NoiseReading noise) {
    static NoiseListening to(float[] samples, int sampleRateHz) {
        return to(samples, sampleRateHz, AudioBlock.DEFAULT_FRAMES);
    }

    static NoiseListening to(float[] samples, int sampleRateHz, int blockFrames) {
        HopGrid grid = new HopGrid(sampleRateHz);
        ActivityMeter activity = ActivityMeter.onSharedSpectrum(grid, Math.max(1, samples.length / grid.hopFrames()));
        NoiseMeter noise = new NoiseMeter(grid, NoiseMeter.USUAL_MEMORY_SECONDS);
        ShortTimeSpectrum spectrum = new ShortTimeSpectrum(grid, activity, noise);
        AudioBlock block = new AudioBlock(blockFrames);
        for (int at = 0; at < samples.length; at += blockFrames) {
            int frames = Math.min(blockFrames, samples.length - at);
            System.arraycopy(samples, at, block.samples(), 0, frames);
            block.set(at, frames);
            spectrum.accept(block);
            activity.accept(block);
        }
        ActivityReading heard = activity.reading();
        return new NoiseListening(heard, noise.reading(heard));
    }

    /** The same sound with every rest cut out: nobody stops playing. */
    static float[] withoutRests(float[] samples, int sampleRateHz, ActivityReading activity) {
        int hopFrames = activity.grid().hopFrames();
        float[] out = new float[samples.length];
        int done = 0;
        for (int hop = 0; (hop + 1) * hopFrames <= samples.length; hop++) {
            if (activity.isPlaying(hop)) {
                System.arraycopy(samples, hop * hopFrames, out, done, hopFrames);
                done += hopFrames;
            }
        }
        return Arrays.copyOf(out, done);
    }
}
