package evenwood.ui.model;

import evenwood.measure.LoudnessMeter;
import evenwood.sound.AudioBlock;
import evenwood.sound.Decibels;
import java.util.Set;
import java.util.function.Consumer;

/** Draws a recording's strip as its blocks pass on their way to the meters. Thread: one. */
final class StripTrace implements Consumer<AudioBlock> {
    private final StripHistory strip;
    private final int sampleRateHz;
    private final LoudnessMeter loudness;

    StripTrace(StripHistory strip, int sampleRateHz) {
        this.strip = strip;
        this.sampleRateHz = sampleRateHz;
        loudness = new LoudnessMeter(sampleRateHz, 1);
    }

    @Override
    public void accept(AudioBlock block) {
        float peak = 0;
        for (int i = 0; i < block.frames(); i++) {
            peak = Math.max(peak, Math.abs(block.sample(i)));
        }
        loudness.accept(block);
        strip.add((double) block.startFrame() / sampleRateHz, Decibels.ofAmplitude(peak), loudness.reading().momentaryLufs(), Set.of());
    }
}
