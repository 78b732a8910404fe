package evenwood.measure;

import com.sun.management.ThreadMXBean;
import evenwood.sound.AudioBlock;
import java.lang.management.ManagementFactory;
import java.util.function.Consumer;

/** Counts what hearing costs in memory. */
public final class Allocation {
    private static final int WARM_UP_CALLS = 20_000;
    private static final int COUNTED_CALLS = 10_000;

    private Allocation() { }

    /** Bytes allocated by this thread in ten thousand calls with blocks of 512 frames, after warming up. */
    public static long bytesOf(Consumer<AudioBlock> accept) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        AudioBlock block = AudioBlock.of(0, Blocks.anySound(1, 48_000, 512.0 / 48_000));
        for (int i = 0; i < WARM_UP_CALLS; i++) {
            accept.accept(block);
        }
        long before = threads.getCurrentThreadAllocatedBytes();
        for (int i = 0; i < COUNTED_CALLS; i++) {
            accept.accept(block);
        }
        return threads.getCurrentThreadAllocatedBytes() - before;
    }
}
