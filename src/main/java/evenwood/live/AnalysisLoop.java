package evenwood.live;

import evenwood.sound.AudioBlock;
import evenwood.sound.BlockRing;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/**
 * The analysis thread: takes every block out of the ring, in order, and lets the listener hear it.
 *
 * <p>Ends when nothing more will come and the ring is empty, so that everything captured is measured. A listener that
 * throws ends the take; what it threw is kept for whoever stops it.
 * <p>Thread: {@link #run} and {@link #drain} on the analysis thread; the getters on any.
 */
final class AnalysisLoop implements Runnable {
    private final BlockRing ring;
    private final BlockListener listener;
    private final SignalPresence presence;
    private final BooleanSupplier nothingMoreComes;
    private final Runnable onFailure;
    private final long pollNanos;
    private final AudioBlock block;
    private long nextPosition;

    private volatile long heardFrames;
    private volatile SignalReading reading = SignalReading.NOT_YET_KNOWN;
    private volatile Throwable failure;

    AnalysisLoop(BlockRing ring, BlockListener listener, BooleanSupplier nothingMoreComes, Runnable onFailure, long pollNanos,
                 int sampleRateHz, int blockFrames) {
        this.ring = ring;
        this.listener = listener;
        this.nothingMoreComes = nothingMoreComes;
        this.onFailure = onFailure;
        this.pollNanos = pollNanos;
        presence = new SignalPresence(sampleRateHz);
        block = new AudioBlock(blockFrames);
    }

    @Override
    public void run() {
        try {
            // Asked before the ring is emptied: what was offered until then is in it.
            boolean last = nothingMoreComes.getAsBoolean();
            while (drain() || !last) {
                LockSupport.parkNanos(this, pollNanos);
                last = nothingMoreComes.getAsBoolean();
            }
        } catch (RuntimeException | Error thrown) {
            failure = thrown;
            onFailure.run();
        }
    }

    /** Lets the listener hear all there is; false when there was nothing. */
    boolean drain() {
        boolean any = false;
        while (ring.poll(block)) {
            hear();
            any = true;
        }
        return any;
    }

    private void hear() {
        long missing = block.startFrame() - nextPosition;
        nextPosition = block.startFrame() + block.frames();
        if (missing > 0) {
            presence.reset();
            listener.gap(missing);
        }
        block.set(heardFrames, block.frames());
        presence.accept(block);
        reading = presence.reading();
        listener.accept(block);
        heardFrames = heardFrames + block.frames();
    }

    long heardFrames() {
        return heardFrames;
    }

    SignalReading presence() {
        return reading;
    }

    /** What the listener threw, or null. */
    Throwable failure() {
        return failure;
    }
}
