package evenwood.bench;

import evenwood.measure.ActivityReading;
import evenwood.measure.HopGrid;
import evenwood.measure.LongTermSpectrumMeter;
import evenwood.measure.LongTermSpectrumReading;
import evenwood.measure.ShortTimeSpectrum;
import java.util.Arrays;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** The shared spectrum with the third-octave bands on it, and a reading with its bootstrap after so much playing. */
@State(Scope.Thread)
public class BandBench {
    private static final HopGrid GRID = new HopGrid(48_000);

    @Param({"60", "600"})
    private int takeSeconds;

    private final Played played = new Played();
    private LongTermSpectrumMeter meter;
    private ShortTimeSpectrum spectrum;
    private ActivityReading activity;

    @Setup
    public void hearATake() {
        int hops = GRID.hopsIn(takeSeconds);
        meter = new LongTermSpectrumMeter(GRID, hops);
        spectrum = new ShortTimeSpectrum(GRID, meter);
        while (meter.endHop() < hops) {
            spectrum.accept(played.nextBlock());
        }
        byte[] states = new byte[hops];
        Arrays.fill(states, hops / 10, hops, ActivityReading.PLAYING);
        Arrays.fill(states, 0, hops / 12, ActivityReading.QUIET);
        activity = new ActivityReading(GRID, 0, states, -80);
    }

    @Benchmark
    public ShortTimeSpectrum accept() {
        spectrum.accept(played.nextBlock());
        return spectrum;
    }

    @Benchmark
    public LongTermSpectrumReading reading() {
        // Only hops of the take are told of, however far the meter has moved on in the other benchmark.
        return meter.reading(new ActivityReading(GRID, meter.firstHop(), activity.states(), activity.floorDbfs()));
    }
}
