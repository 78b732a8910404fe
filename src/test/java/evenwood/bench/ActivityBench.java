package evenwood.bench;

import evenwood.measure.ActivityMeter;
import evenwood.measure.ActivityReading;
import evenwood.measure.HopGrid;
import evenwood.sound.AudioBlock;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** With a spectrum of its own, which the whole set of meters shares; the reading is of ten minutes. */
@State(Scope.Thread)
public class ActivityBench {
    private static final HopGrid GRID = new HopGrid(48_000);
    private static final int HOPS = GRID.hopsIn(600);

    private final Played played = new Played();
    private final ActivityMeter meter = new ActivityMeter(GRID, HOPS);

    @Setup
    public void hearTenMinutes() {
        for (int i = 0; i < HOPS * GRID.hopFrames() / AudioBlock.DEFAULT_FRAMES; i++) {
            meter.accept(played.nextBlock());
        }
    }

    @Benchmark
    public ActivityMeter accept() {
        meter.accept(played.nextBlock());
        return meter;
    }

    @Benchmark
    public ActivityReading reading() {
        return meter.reading();
    }
}
