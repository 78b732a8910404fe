package evenwood.bench;

import evenwood.eq.ControlLaws;
import evenwood.eq.Differences;
import evenwood.eq.Solution;
import evenwood.eq.Solver;
import evenwood.measure.ToneDifference;
import evenwood.rig.Presets;
import evenwood.rig.Setting;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** One answer of the solver: three knobs (under 50 ms is wanted), a channel strip, a plain parametric equaliser. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(java.util.concurrent.TimeUnit.MILLISECONDS)
public class SolverBench {
    private static final int DIFFERENCES = 32;

    private final Solver solver = new Solver(Differences.SAMPLE_RATE_HZ);
    private final List<Setting> knobs = neutral("amp-bass-mid-treble");
    private final List<Setting> strip = neutral("channel-strip");
    private int next;

    @Benchmark
    public Solution threeKnobs() {
        return solver.solve(heard(), knobs, ControlLaws.NOMINAL, 3);
    }

    @Benchmark
    public Solution channelStrip() {
        return solver.solve(heard(), strip, ControlLaws.NOMINAL, 3);
    }

    @Benchmark
    public Solution parametric() {
        return solver.solve(heard(), 3);
    }

    private ToneDifference heard() {
        next = (next + 1) % DIFFERENCES;
        return Differences.of(Differences.someEq(new SplittableRandom(next)), 1, 1);
    }

    private static List<Setting> neutral(String set) {
        return new Presets(Path.of("none")).controls(set).controls().stream().map(Setting::neutral).toList();
    }
}
