package evenwood.bench;

import evenwood.measure.HopGrid;
import evenwood.measure.ShortTimeSpectrum;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** The shared spectrum alone; what its listeners cost is the difference to their own benchmarks. */
@State(Scope.Thread)
public class SpectrumBench {
    private final Played played = new Played();
    private final ShortTimeSpectrum spectrum = new ShortTimeSpectrum(new HopGrid(48_000));

    @Benchmark
    public ShortTimeSpectrum accept() {
        spectrum.accept(played.nextBlock());
        return spectrum;
    }
}
