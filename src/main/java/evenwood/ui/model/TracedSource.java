package evenwood.ui.model;

import evenwood.measure.LoudnessMeter;
import evenwood.sound.AudioBlock;
import evenwood.sound.Decibels;
import evenwood.sound.SoundFormat;
import evenwood.sound.SoundSource;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.BooleanSupplier;

/** A recording on its way to the meters: draws its strip as it passes, and ends early when the player gives up. */
final class TracedSource implements SoundSource {
    private final SoundSource source;
    private final StripHistory strip;
    private final BooleanSupplier cancelled;
    private final LoudnessMeter loudness;

    TracedSource(SoundSource source, StripHistory strip, BooleanSupplier cancelled) {
        this.source = source;
        this.strip = strip;
        this.cancelled = cancelled;
        loudness = new LoudnessMeter(source.format().sampleRateHz(), 1);
    }

    @Override
    public int read(AudioBlock block) {
        if (cancelled.getAsBoolean()) {
            return -1;
        }
        int frames = source.read(block);
        if (frames > 0) {
            float peak = 0;
            for (int i = 0; i < frames; i++) {
                peak = Math.max(peak, Math.abs(block.sample(i)));
            }
            loudness.accept(block);
            strip.add((double) block.startFrame() / format().sampleRateHz(), Decibels.ofAmplitude(peak), loudness.reading().momentaryLufs(), Set.of());
        }
        return frames;
    }

    @Override
    public SoundFormat format() {
        return source.format();
    }

    @Override
    public OptionalLong lengthFrames() {
        return source.lengthFrames();
    }

    @Override
    public String name() {
        return source.name();
    }

    @Override
    public void close() {
        source.close();
    }
}
