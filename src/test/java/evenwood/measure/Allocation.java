package evenwood.measure;

import com.sun.management.ThreadMXBean;
import evenwood.sound.AudioBlock;
import java.lang.management.ManagementFactory;
import java.util.function.Consumer;

/** Counts what hearing costs in memory. */
public final class Allocation {
    private static final int WARM_UP_CALLS = 20_000;
    private static final int ROUNDS = 3;
    private static final int COUNTED_CALLS = 10_000;

    private Allocation() { }

    /**
     * Bytes allocated by this thread in ten thousand calls with blocks of 512 frames, after warming up. The least of
     * three counts: what the compiler allocates once while it swaps code is not the meter's.
     */
    public static long bytesOf(Consumer<AudioBlock> accept) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        AudioBlock block = AudioBlock.of(0, Blocks.anySound(1, 48_000, 512.0 / 48_000));
        for (int i = 0; i < WARM_UP_CALLS; i++) {
            accept.accept(block);
        }
        long least = Long.MAX_VALUE;
        for (int round = 0; round < ROUNDS; round++) {
            long before = threads.getCurrentThreadAllocatedBytes();
            for (int i = 0; i < COUNTED_CALLS; i++) {
                accept.accept(block);
            }
            least = Math.min(least, threads.getCurrentThreadAllocatedBytes() - before);
        }
        return least;
    }
}
