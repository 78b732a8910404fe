package evenwood.bench;

import evenwood.measure.DistortionMeter;
import evenwood.measure.DistortionReading;
import evenwood.measure.HopGrid;
import evenwood.sound.SoundFormat;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

@State(Scope.Thread)
public class DistortionBench {
    private static final int TEN_MINUTES_OF_BLOCKS = 10 * 60 * 48_000 / 512;

    private final Played played = new Played();
    private final DistortionMeter meter = new DistortionMeter(new SoundFormat(48_000, 1, 1, 24), new HopGrid(48_000), 15_000);

    @Setup
    public void hearTenMinutes() {
        for (int i = 0; i < TEN_MINUTES_OF_BLOCKS; i++) {
            meter.accept(played.nextBlock());
        }
    }

    @Benchmark
    public DistortionMeter accept() {
        meter.accept(played.nextBlock());
        return meter;
    }

    @Benchmark
    public DistortionReading reading() {
        return meter.reading();
    }
}
