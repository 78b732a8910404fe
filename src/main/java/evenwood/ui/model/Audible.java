package evenwood.ui.model;

import evenwood.coach.Move;
import evenwood.eq.EqChain;
import evenwood.eq.EqualisedTake;
import evenwood.eq.Rendering;
import evenwood.live.Audition;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;
import evenwood.sound.Speaker;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** A take played with moves and without, equally loud, on a thread of its own. */
public final class Audible implements AutoCloseable {
    private final Supplier<SoundSource> source;
    private final EqChain change;
    private final Runnable ended;
    private final Consumer<Problem> failed;
    private final Runnable began;
    private volatile Audition audition;
    private volatile boolean closed;

    /**
     * @param source opens the take, as often as it takes
     * @param ended  told when it is over by itself
     * @param failed told what went wrong
     * @param began  told when the sound begins
     */
    public Audible(Supplier<SoundSource> source, List<Move> moves, Runnable ended, Consumer<Problem> failed, Runnable began) {
        this.source = source;
        change = MadeMoves.chain(moves);
        this.ended = ended;
        this.failed = failed;
        this.began = began;
    }

    public void start() {
        Thread thread = new Thread(this::play, "evenwood-hear");
        thread.setDaemon(true);
        thread.start();
    }

    /** The other version from now on. @return whether the moves are heard */
    public boolean toggle() {
        Audition now = audition;
        if (now != null) {
            now.toggle();
        }
        return now == null || now.isMoved();
    }

    @Override
    public void close() {
        closed = true;
    }

    private void play() {
        try {
            Rendering levels = Rendering.matched(measured(EqChain.FLAT), measured(change));
            try (SoundSource take = source.get(); Speaker speaker = Speaker.open(null, take.format().sampleRateHz())) {
                audition = new Audition(take, change, levels, speaker);
                began.run();
                while (!closed && audition.playNext()) {
                    // Waiting happens in the speaker.
                }
            }
            if (!closed) {
                ended.run();
            }
        } catch (SoundProblem problem) {
            failed.accept(Problem.of(problem));
        }
    }

    private EqualisedTake measured(EqChain chain) {
        try (SoundSource take = source.get()) {
            return EqualisedTake.measure(take, chain);
        }
    }
}
