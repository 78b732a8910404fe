package evenwood.measure;

import evenwood.sound.AudioBlock;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.stream.IntStream;

/** Cuts a signal into blocks for a meter. */
public final class Blocks {
    /** The block sizes no reading may depend on. */
    public static final int[] SIZES = {1, 2, 3, 7, 64, 441, 512, 1000, 4096, 8192};

    private Blocks() { }

    public static void feed(float[] samples, Consumer<AudioBlock> meter) {
        feed(samples, AudioBlock.DEFAULT_FRAMES, meter);
    }

    public static void feed(float[] samples, int blockFrames, Consumer<AudioBlock> meter) {
        AudioBlock block = new AudioBlock(blockFrames);
        for (int start = 0; start < samples.length; start += blockFrames) {
            int frames = Math.min(blockFrames, samples.length - start);
            System.arraycopy(samples, start, block.samples(), 0, frames);
            block.set(start, frames);
            meter.accept(block);
        }
    }

    /** Blocks of 1 to 8192 frames, each of another size. */
    public static void feedInRandomSizes(float[] samples, long seed, Consumer<AudioBlock> meter) {
        SplittableRandom random = new SplittableRandom(seed);
        AudioBlock block = new AudioBlock(8192);
        for (int start = 0; start < samples.length; start += block.frames()) {
            int frames = Math.min(1 << random.nextInt(14), samples.length - start);
            System.arraycopy(samples, start, block.samples(), 0, frames);
            block.set(start, frames);
            meter.accept(block);
        }
    }

    public static float[] scaled(float[] samples, double factor) {
        float[] scaled = new float[samples.length];
        for (int i = 0; i < samples.length; i++) {
            scaled[i] = (float) (samples[i] * factor);
        }
        return scaled;
    }

    public static float[] joined(float[]... parts) {
        float[] all = new float[Arrays.stream(parts).mapToInt(part -> part.length).sum()];
        int at = 0;
        for (float[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }

    /** Struck tones of random pitch, strength and decay over a little noise, with rests: no two seeds alike. */
    public static float[] anySound(long seed, int sampleRateHz, double seconds) {
        SplittableRandom random = new SplittableRandom(seed);
        float[] sound = new float[(int) (seconds * sampleRateHz)];
        double noise = Math.pow(10, -random.nextDouble(3, 5));
        IntStream.range(0, sound.length).forEach(i -> sound[i] = (float) (noise * random.nextDouble(-1, 1)));
        for (double at = random.nextDouble(0.3); at < seconds; at += random.nextDouble(0.05, 1.5)) {
            double omega = 2 * Math.PI * random.nextDouble(60, 0.4 * sampleRateHz) / sampleRateHz;
            double amplitude = Math.pow(10, -random.nextDouble(0.3, 2));
            double decayFrames = random.nextDouble(0.02, 0.8) * sampleRateHz;
            int start = (int) (at * sampleRateHz);
            for (int i = start; i < Math.min(sound.length, start + 5 * decayFrames); i++) {
                sound[i] += (float) (amplitude * Math.exp((start - i) / decayFrames) * Math.sin(omega * (i - start)));
            }
        }
        return sound;
    }
}
