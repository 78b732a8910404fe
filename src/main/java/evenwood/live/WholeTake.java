package evenwood.live;

import evenwood.measure.TakeMeters;
import evenwood.measure.TakeReadings;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * Measures a recorded take from its start to its end, on the caller's thread.
 *
 * @param readings what was measured, up to the end or up to the failure
 * @param failure  what went wrong midway, if anything did
 */
public record WholeTake(TakeReadings readings, Optional<SoundProblem> failure) {
    private static final int BLOCK_FRAMES = 4096;
    private static final int BLOCKS_PER_PROGRESS = 256;
    private static final double UNKNOWN_LENGTH_SECONDS = 3600;

    /**
     * Hears the whole source and leaves it open.
     *
     * @param progress told the part done, 0 to 1, now and then; empty when the length is not known
     * @throws SoundProblem if nothing at all could be read
     */
    public static WholeTake measure(SoundSource source, Consumer<OptionalDouble> progress) {
        TakeMeters meters = new TakeMeters(source.format(), lengthSeconds(source));
        AudioBlock block = new AudioBlock(BLOCK_FRAMES);
        Optional<SoundProblem> failure = Optional.empty();
        try {
            for (long blocks = 0; source.read(block) >= 0; blocks++) {
                meters.accept(block);
                if (blocks % BLOCKS_PER_PROGRESS == 0) {
                    progress.accept(done(source, block.startFrame()));
                }
            }
        } catch (SoundProblem problem) {
            if (!problem.isMidway()) {
                throw problem;
            }
            failure = Optional.of(problem);
        }
        progress.accept(OptionalDouble.of(1));
        return new WholeTake(meters.readingsOfFinishedTake(source.name()), failure);
    }

    private static OptionalDouble done(SoundSource source, long frame) {
        return source.lengthFrames().isPresent()
            ? OptionalDouble.of(Math.min(1, (double) frame / Math.max(1, source.lengthFrames().getAsLong())))
            : OptionalDouble.empty();
    }

    private static double lengthSeconds(SoundSource source) {
        return source.lengthFrames().isPresent()
            ? (double) source.lengthFrames().getAsLong() / source.format().sampleRateHz() : UNKNOWN_LENGTH_SECONDS;
    }
}
