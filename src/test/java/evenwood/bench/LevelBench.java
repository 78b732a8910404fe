package evenwood.bench;

import evenwood.measure.HopGrid;
import evenwood.measure.LevelMeter;
import evenwood.measure.LevelReading;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

@State(Scope.Thread)
public class LevelBench {
    private final Played played = new Played();
    private final LevelMeter meter = new LevelMeter(new HopGrid(48_000), 10_000);

    @Setup
    public void hearSome() {
        for (int i = 0; i < 7; i++) {
            meter.accept(played.nextBlock());
        }
    }

    @Benchmark
    public LevelMeter accept() {
        meter.accept(played.nextBlock());
        return meter;
    }

    @Benchmark
    public LevelReading reading() {
        return meter.reading();
    }
}
