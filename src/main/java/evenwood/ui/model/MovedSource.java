package evenwood.ui.model;

import evenwood.eq.EqChain;
import evenwood.eq.EqProcessor;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundFormat;
import evenwood.sound.SoundSource;
import java.util.OptionalLong;

/** A take with moves already made. */
final class MovedSource implements SoundSource {
    private final SoundSource source;
    private final EqProcessor moves;

    MovedSource(SoundSource source, EqChain moves) {
        this.source = source;
        this.moves = new EqProcessor(moves, source.format().sampleRateHz());
    }

    @Override
    public int read(AudioBlock block) {
        int frames = source.read(block);
        if (frames > 0) {
            moves.process(block);
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
