package evenwood.takes;

import java.util.List;

/**
 * Plays notes on the samples of a patch: moved in pitch by a windowed sinc of 32 taps, faded after the loop begins when
 * plucked, let go at the note's end. Level goes with 40·lg(velocity/127), as in the other banks.
 */
final class PatchPlayer {
    private static final int TAPS = 32;
    private static final int PHASES = 512;
    private static final double SIXTY_DB = Math.log(1000);
    private static final double RELEASE_SECONDS = 0.25;
    private static final double PLUCKED_FADE_SECONDS = 2.2;
    private static final double LEVEL = 0.3;
    /** Some samples of the bank begin in the middle of a wave; begun at once they click, as no string does. */
    private static final double EASE_IN_SECONDS = 0.001;

    private final GusPatch patch;
    private final boolean plucked;
    private final int sampleRateHz;

    PatchPlayer(GusPatch patch, boolean plucked, int sampleRateHz) {
        this.patch = patch;
        this.plucked = plucked;
        this.sampleRateHz = sampleRateHz;
    }

    float[] play(List<PlayedNote> notes, double lengthSeconds) {
        float[] out = new float[(int) Math.round(lengthSeconds * sampleRateHz)];
        for (PlayedNote note : notes) {
            add(note, out);
        }
        return out;
    }

    private void add(PlayedNote note, float[] out) {
        GusPatch.Sample sample = patch.near(note.frequencyHz());
        double step = note.frequencyHz() / sample.rootHz() * sample.sampleRateHz() / sampleRateHz;
        double[][] kernels = kernels(Math.min(1, 1 / step));
        double gain = LEVEL * Math.pow(note.velocity() / 127.0, 2);
        double release = Math.exp(-SIXTY_DB / (RELEASE_SECONDS * sampleRateHz));
        double fade = plucked ? Math.exp(-SIXTY_DB / (PLUCKED_FADE_SECONDS * sampleRateHz)) : 1;
        int start = (int) Math.round(note.startSeconds() * sampleRateHz);
        int end = (int) Math.round(note.endSeconds() * sampleRateHz);
        double at = 0;
        for (int i = start; i < out.length && (i < end || gain > 1e-7); i++) {
            double eased = Math.min(1, (i - start) / (EASE_IN_SECONDS * sampleRateHz));
            out[i] += (float) (eased * gain * read(sample, at, kernels));
            at += step;
            gain *= (i >= end ? release : 1) * (at > sample.loopStart() ? fade : 1);
        }
    }

    private static double read(GusPatch.Sample sample, double at, double[][] kernels) {
        int whole = (int) Math.floor(at);
        double[] kernel = kernels[(int) ((at - whole) * PHASES)];
        double sum = 0;
        for (int t = 0; t < TAPS; t++) {
            sum += kernel[t] * frame(sample, whole + t - TAPS / 2 + 1);
        }
        return sum;
    }

    /** What stands there when the loop is rolled out for ever. */
    private static double frame(GusPatch.Sample sample, int index) {
        if (index < 0) {
            return 0;
        }
        int loop = sample.loopEnd() - sample.loopStart();
        int rolled = index < sample.loopEnd() || loop <= 0 ? index : sample.loopStart() + (index - sample.loopEnd()) % loop;
        return rolled < sample.wave().length ? sample.wave()[rolled] : 0;
    }

    /** A Hann-windowed sinc for each fraction of a frame; {@code cut} 1 keeps all, less leaves out what would fold back. */
    private static double[][] kernels(double cut) {
        double[][] kernels = new double[PHASES][TAPS];
        for (int p = 0; p < PHASES; p++) {
            for (int t = 0; t < TAPS; t++) {
                double x = t - TAPS / 2.0 + 1 - p / (double) PHASES;
                double sinc = x == 0 ? 1 : Math.sin(Math.PI * cut * x) / (Math.PI * cut * x);
                kernels[p][t] = cut * sinc * (0.5 + 0.5 * Math.cos(2 * Math.PI * x / TAPS));
            }
        }
        return kernels;
    }
}
