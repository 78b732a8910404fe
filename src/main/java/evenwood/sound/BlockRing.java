package evenwood.sound;

import org.jctools.queues.atomic.SpscAtomicArrayQueue;

/**
 * The only way sound passes from the capture thread to the analysis thread: a ring of ready-made blocks.
 *
 * <p>In: {@link #offer} by one producer. Out: {@link #poll} by one consumer, same order, nothing twice. Full is a return
 * value: the offered block is then lost as a whole, and {@link #lostFrames()} says how much that was so far.
 * <p>How: every block is made in the constructor and then travels between two single-producer single-consumer queues,
 * the free and the filled ones (JCTools: wait-free, padded counters, ordered writes). Both sides copy, so that nobody
 * ever holds a block the other may write; 512 frames take about a tenth of a microsecond.
 * <p>Thread: one producer, one consumer; neither waits, locks or allocates.
 */
public final class BlockRing {
    private final SpscAtomicArrayQueue<AudioBlock> free;
    private final SpscAtomicArrayQueue<AudioBlock> filled;
    private final int capacityBlocks;
    // Written by the producer alone, so that a plain increment of a volatile is enough.
    private volatile long lostFrames;

    public BlockRing(int capacityBlocks, int blockFrames) {
        if (capacityBlocks < 2) {
            throw new IllegalArgumentException("block ring: capacityBlocks=" + capacityBlocks + ", but at least 2 are needed");
        }
        this.capacityBlocks = capacityBlocks;
        free = new SpscAtomicArrayQueue<>(capacityBlocks);
        filled = new SpscAtomicArrayQueue<>(capacityBlocks);
        for (int i = 0; i < capacityBlocks; i++) {
            free.offer(new AudioBlock(blockFrames));
        }
    }

    /** A ring that can hold at least the given time of full blocks. */
    public static BlockRing holdingSeconds(double seconds, int sampleRateHz, int blockFrames) {
        return new BlockRing(Math.max(2, (int) Math.ceil(seconds * sampleRateHz / blockFrames)), blockFrames);
    }

    /**
     * Copies the block into the ring; never blocks. [capture thread]
     *
     * @return false when the ring is full: the block is lost and counted, and the caller goes on with the next
     */
    @SuppressWarnings("NonAtomicOperationOnVolatileField")
    public boolean offer(AudioBlock block) {
        AudioBlock slot = free.poll();
        if (slot == null) {
            lostFrames += block.frames();
            return false;
        }
        slot.copyFrom(block);
        filled.offer(slot);
        return true;
    }

    /**
     * Copies the oldest block out of the ring; never blocks. [analysis thread]
     *
     * @return false when there is none, and {@code into} is unchanged
     */
    public boolean poll(AudioBlock into) {
        AudioBlock slot = filled.poll();
        if (slot == null) {
            return false;
        }
        into.copyFrom(slot);
        free.offer(slot);
        return true;
    }

    /** Frames that found no room since the start. [any thread] */
    public long lostFrames() {
        return lostFrames;
    }

    public int capacityBlocks() {
        return capacityBlocks;
    }
}
