package evenwood.measure;

import evenwood.sound.AudioBlock;
import evenwood.sound.Decibels;
import java.util.SplittableRandom;
import java.util.function.Consumer;

/** A take drawn by hand for tests: notes, hum, hiss and clicks added onto silence. Deterministic by seed. */
final class SoundSketch {
    final int sampleRateHz;
    final float[] samples;
    private final SplittableRandom random;

    SoundSketch(int sampleRateHz, double seconds, long seed) {
        this.sampleRateHz = sampleRateHz;
        samples = new float[(int) Math.round(seconds * sampleRateHz)];
        random = new SplittableRandom(seed);
    }

    /** White noise of this RMS over the whole take. */
    SoundSketch hiss(double rmsDbfs) {
        double rms = Decibels.toAmplitude(rmsDbfs);
        for (int i = 0; i < samples.length; i++) {
            samples[i] += (float) (rms * gaussian());
        }
        return this;
    }

    /** Harmonics 1 to 10 of the mains, odd ones stronger, together of this RMS. */
    SoundSketch hum(double mainsHz, double rmsDbfs) {
        double[] amplitude = {1, 0.5, 0.6, 0.2, 0.4, 0.1, 0.2, 0.05, 0.1, 0.03};
        double power = 0;
        for (double a : amplitude) {
            power += a * a / 2;
        }
        double scale = Decibels.toAmplitude(rmsDbfs) / Math.sqrt(power);
        for (int h = 0; h < amplitude.length; h++) {
            double phase = 2 * Math.PI * random.nextDouble();
            double step = 2 * Math.PI * mainsHz * (h + 1) / sampleRateHz;
            for (int i = 0; i < samples.length; i++) {
                samples[i] += (float) (scale * amplitude[h] * Math.sin(phase + step * i));
            }
        }
        return this;
    }

    /** A plucked string: partials 1/n, each dying exponentially, higher ones faster; stopped after the given time. */
    SoundSketch pluck(double startSeconds, double soundingSeconds, double frequencyHz, double peakDbfs, double decayDbPerSecond) {
        return tone(startSeconds, soundingSeconds, frequencyHz, peakDbfs, 0.002, decayDbPerSecond);
    }

    /** A bowed note: partials 1/n that swell over 60 ms, with vibrato and a wavering bow, and stop. */
    SoundSketch bow(double startSeconds, double soundingSeconds, double frequencyHz, double peakDbfs) {
        int start = (int) (startSeconds * sampleRateHz);
        int count = Math.min(samples.length - start, (int) (soundingSeconds * sampleRateHz));
        float[] note = new float[count];
        double phase = 0;
        double waver = 0;
        for (int i = 0; i < count; i++) {
            double t = i / (double) sampleRateHz;
            phase += 2 * Math.PI * frequencyHz * Math.pow(2, 15 * Math.sin(2 * Math.PI * 5.5 * t) / 1200) / sampleRateHz;
            waver += 0.0002 * (0.2 * gaussian() * Math.sqrt(1 / 0.0002) * 0.1 - waver);
            double envelope = Math.min(1, t / 0.06) * Math.min(1, (soundingSeconds - t) / 0.05) * (1 + waver);
            for (int n = 1; n <= 20 && n * frequencyHz < 0.45 * sampleRateHz; n++) {
                note[i] += (float) (envelope * Math.sin(n * phase) / n);
            }
        }
        return add(start, note, peakDbfs);
    }

    /** One short broadband click of about a millisecond. */
    SoundSketch click(double atSeconds, double peakDbfs) {
        float[] click = new float[Math.max(2, sampleRateHz / 1000)];
        for (int i = 0; i < click.length; i++) {
            click[i] = (float) (gaussian() * Math.exp(-5.0 * i / click.length));
        }
        return add((int) (atSeconds * sampleRateHz), click, peakDbfs);
    }

    SoundSketch gain(double db) {
        double factor = Decibels.toAmplitude(db);
        for (int i = 0; i < samples.length; i++) {
            samples[i] *= (float) factor;
        }
        return this;
    }

    /** Plays the take to a meter in blocks. */
    void into(Consumer<AudioBlock> meter, int blockFrames) {
        AudioBlock block = new AudioBlock(blockFrames);
        for (int done = 0; done < samples.length; done += block.frames()) {
            int count = Math.min(blockFrames, samples.length - done);
            System.arraycopy(samples, done, block.samples(), 0, count);
            block.set(done, count);
            meter.accept(block);
        }
    }

    private SoundSketch tone(double startSeconds, double soundingSeconds, double frequencyHz, double peakDbfs,
                             double attackSeconds, double decayDbPerSecond) {
        int start = (int) (startSeconds * sampleRateHz);
        int count = Math.min(samples.length - start, (int) (soundingSeconds * sampleRateHz));
        float[] note = new float[count];
        for (int n = 1; n <= 20 && n * frequencyHz < 0.45 * sampleRateHz; n++) {
            double phase = 2 * Math.PI * random.nextDouble();
            double step = 2 * Math.PI * n * frequencyHz / sampleRateHz;
            double decay = -decayDbPerSecond * (1 + 0.3 * (n - 1)) * Math.log(10) / 20 / sampleRateHz;
            for (int i = 0; i < count; i++) {
                note[i] += (float) (Math.exp(decay * i) * Math.sin(phase + step * i) / n);
            }
        }
        int attack = (int) (attackSeconds * sampleRateHz);
        int release = Math.min(count / 2, (int) (0.02 * sampleRateHz));
        for (int i = 0; i < count; i++) {
            note[i] *= (float) (Math.min(1, (i + 1.0) / attack) * Math.min(1, (count - i) / (double) release));
        }
        return add(start, note, peakDbfs);
    }

    private SoundSketch add(int start, float[] sound, double peakDbfs) {
        float peak = 0;
        for (float x : sound) {
            peak = Math.max(peak, Math.abs(x));
        }
        float factor = (float) (Decibels.toAmplitude(peakDbfs) / peak);
        for (int i = 0; i < sound.length && start + i < samples.length; i++) {
            samples[start + i] += factor * sound[i];
        }
        return this;
    }

    private double gaussian() {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }
}
