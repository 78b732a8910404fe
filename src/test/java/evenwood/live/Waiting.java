package evenwood.live;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** Waits for something another thread does, as short as possible and never for ever. */
final class Waiting {
    private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(20);
    private static final long LOOK_NANOS = TimeUnit.MICROSECONDS.toNanos(200);

    private Waiting() { }

    static void until(String what, BooleanSupplier condition) {
        long end = System.nanoTime() + PATIENCE_NANOS;
        while (!condition.getAsBoolean()) {
            if (System.nanoTime() > end) {
                throw new AssertionError("waited 20 s in vain until " + what);
            }
            LockSupport.parkNanos(LOOK_NANOS);
        }
    }
}
