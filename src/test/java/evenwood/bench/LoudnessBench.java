package evenwood.bench;

import evenwood.measure.LoudnessMeter;
import evenwood.measure.LoudnessReading;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

@State(Scope.Thread)
public class LoudnessBench {
    private static final int BLOCKS_OF_TWO_MINUTES = 11_250;

    private final Played played = new Played();
    private final LoudnessMeter meter = new LoudnessMeter(48_000, 1);

    @Setup
    public void hearTwoMinutes() {
        for (int i = 0; i < BLOCKS_OF_TWO_MINUTES; i++) {
            meter.accept(played.nextBlock());
        }
    }

    @Benchmark
    public LoudnessMeter accept() {
        meter.accept(played.nextBlock());
        return meter;
    }

    @Benchmark
    public LoudnessReading reading() {
        return meter.reading();
    }

    @Benchmark
    public LoudnessReading readingOfFinishedTake() {
        return meter.readingOfFinishedTake();
    }
}
