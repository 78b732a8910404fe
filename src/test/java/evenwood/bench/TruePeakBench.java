package evenwood.bench;

import evenwood.measure.HopGrid;
import evenwood.measure.TruePeakMeter;
import evenwood.measure.TruePeakReading;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

@State(Scope.Thread)
public class TruePeakBench {
    private final Played played = new Played();
    private final TruePeakMeter meter = new TruePeakMeter(new HopGrid(48_000), 10_000);

    @Setup
    public void hearSome() {
        for (int i = 0; i < 7; i++) {
            meter.accept(played.nextBlock());
        }
    }

    @Benchmark
    public TruePeakMeter accept() {
        meter.accept(played.nextBlock());
        return meter;
    }

    @Benchmark
    public TruePeakReading reading() {
        return meter.reading();
    }
}
