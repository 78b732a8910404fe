package evenwood.ui.model;

import evenwood.sound.AudioBlock;
import evenwood.sound.SoundFormat;
import evenwood.sound.SoundSource;
import java.util.OptionalLong;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** A source whose blocks something looks at or changes as they pass, and that ends early when nobody wants more. */
final class ThroughSource implements SoundSource {
    private final SoundSource source;
    private final Consumer<AudioBlock> passing;
    private final BooleanSupplier enough;

    ThroughSource(SoundSource source, Consumer<AudioBlock> passing, BooleanSupplier enough) {
        this.source = source;
        this.passing = passing;
        this.enough = enough;
    }

    @Override
    public int read(AudioBlock block) {
        int frames = enough.getAsBoolean() ? -1 : source.read(block);
        if (frames > 0) {
            passing.accept(block);
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
