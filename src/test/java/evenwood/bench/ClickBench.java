package evenwood.bench;

import evenwood.measure.ClickMeter;
import evenwood.measure.DropoutMeter;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** Clicks and dropouts, each alone. */
@State(Scope.Thread)
public class ClickBench {
    private final Played played = new Played();
    private final ClickMeter clicks = new ClickMeter(48_000);
    private final DropoutMeter dropouts = new DropoutMeter(48_000);

    @Benchmark
    public ClickMeter acceptClicks() {
        clicks.accept(played.nextBlock());
        return clicks;
    }

    @Benchmark
    public DropoutMeter acceptDropouts() {
        dropouts.accept(played.nextBlock());
        return dropouts;
    }
}
