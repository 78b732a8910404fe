package evenwood.bench;

import evenwood.measure.HopGrid;
import evenwood.measure.RingingMeter;
import evenwood.measure.RingingReading;
import evenwood.measure.ShortTimeSpectrum;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** The shared spectrum with the ringing meter on it. */
@State(Scope.Thread)
public class RingingBench {
    private final Played played = new Played();
    private final RingingMeter meter = new RingingMeter(new HopGrid(48_000));
    private final ShortTimeSpectrum spectrum = new ShortTimeSpectrum(new HopGrid(48_000), meter);

    @Benchmark
    public ShortTimeSpectrum accept() {
        spectrum.accept(played.nextBlock());
        return spectrum;
    }

    @Benchmark
    public RingingReading reading() {
        return meter.reading();
    }
}
