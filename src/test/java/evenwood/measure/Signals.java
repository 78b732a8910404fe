package evenwood.measure;

import evenwood.sound.AudioBlock;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.Consumer;

/** Sounds for tests that are known in closed form, and ways to play them to a meter. */
final class Signals {
    private Signals() { }

    static float[] sine(int sampleRateHz, double seconds, double frequencyHz, double amplitude) {
        float[] sound = new float[(int) Math.round(seconds * sampleRateHz)];
        for (int i = 0; i < sound.length; i++) {
            sound[i] = (float) (amplitude * Math.sin(2 * Math.PI * frequencyHz * i / sampleRateHz));
        }
        return sound;
    }

    /** Gaussian white noise of the given RMS. */
    static float[] noise(long seed, int sampleRateHz, double seconds, double rms) {
        SplittableRandom random = new SplittableRandom(seed);
        float[] sound = new float[(int) Math.round(seconds * sampleRateHz)];
        for (int i = 0; i < sound.length; i++) {
            sound[i] = (float) (rms * random.nextGaussian());
        }
        return sound;
    }

    static float[] add(float[] a, float[] b) {
        float[] sum = a.clone();
        for (int i = 0; i < Math.min(a.length, b.length); i++) {
            sum[i] += b[i];
        }
        return sum;
    }

    static float[] times(float[] sound, double gain) {
        float[] louder = sound.clone();
        for (int i = 0; i < louder.length; i++) {
            louder[i] *= (float) gain;
        }
        return louder;
    }

    static float[] join(float[]... parts) {
        float[] all = new float[Arrays.stream(parts).mapToInt(part -> part.length).sum()];
        int at = 0;
        for (float[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }

    /** Plays a sound in blocks of one size. */
    static void play(float[] sound, int blockFrames, Consumer<AudioBlock> ear) {
        AudioBlock block = new AudioBlock(blockFrames);
        for (int start = 0; start < sound.length; start += blockFrames) {
            int frames = Math.min(blockFrames, sound.length - start);
            System.arraycopy(sound, start, block.samples(), 0, frames);
            block.set(start, frames);
            ear.accept(block);
        }
    }

    /** An activity that calls every hop of a take the same. */
    static ActivityReading all(HopGrid grid, long hops, byte state) {
        byte[] states = new byte[(int) hops];
        Arrays.fill(states, state);
        return new ActivityReading(grid, 0, states, Double.NEGATIVE_INFINITY);
    }
}
