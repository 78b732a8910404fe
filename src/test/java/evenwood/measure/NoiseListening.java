package evenwood.measure;

import evenwood.sound.AudioBlock;
import java.util.Arrays;

/** The noise of a take as the program hears it: playing or quiet is found, not given. */
record NoiseListening(ActivityReading activity, NoiseReading noise) {
    private static final double FADE_SECONDS = 0.01;

    static NoiseListening to(float[] samples, int sampleRateHz) {
        return to(samples, sampleRateHz, AudioBlock.DEFAULT_FRAMES);
    }

    static NoiseListening to(float[] samples, int sampleRateHz, int blockFrames) {
        HopGrid grid = new HopGrid(sampleRateHz);
        ActivityMeter activity = ActivityMeter.onSharedSpectrum(grid, Math.max(1, samples.length / grid.hopFrames()));
        NoiseMeter noise = new NoiseMeter(grid, NoiseMeter.USUAL_MEMORY_SECONDS);
        ShortTimeSpectrum spectrum = new ShortTimeSpectrum(grid, activity, noise);
        Blocks.feed(samples, blockFrames, block -> {
            spectrum.accept(block);
            activity.accept(block);
        });
        ActivityReading heard = activity.reading();
        return new NoiseListening(heard, noise.reading(heard));
    }

    /** The same sound with every rest cut out and the cuts faded over, so that nobody stops playing. */
    static float[] withoutRests(float[] samples, int sampleRateHz) {
        ActivityReading activity = to(samples, sampleRateHz).activity;
        int hopFrames = activity.grid().hopFrames();
        int fade = (int) (FADE_SECONDS * sampleRateHz);
        float[] out = new float[samples.length];
        int done = 0;
        boolean joined = true;
        for (int hop = 0; (hop + 1) * hopFrames <= samples.length; hop++) {
            if (!activity.isPlaying(hop)) {
                joined = false;
                continue;
            }
            int from = hop * hopFrames;
            for (int i = 0; !joined && done >= fade && i < fade; i++) {
                float share = (float) i / fade;
                out[done - fade + i] = (1 - share) * out[done - fade + i] + share * samples[from - fade + i];
            }
            System.arraycopy(samples, from, out, done, hopFrames);
            done += hopFrames;
            joined = true;
        }
        return Arrays.copyOf(out, done);
    }
}
