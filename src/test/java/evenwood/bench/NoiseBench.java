package evenwood.bench;

import evenwood.measure.ActivityReading;
import evenwood.measure.HopGrid;
import evenwood.measure.NoiseMeter;
import evenwood.measure.NoiseReading;
import evenwood.measure.ShortTimeSpectrum;
import evenwood.sound.AudioBlock;
import java.util.Arrays;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * The shared spectrum with the noise meter on it (take off what the spectrum alone costs), and a reading after two
 * minutes: with a tenth of it quiet, and without a rest.
 */
@State(Scope.Thread)
public class NoiseBench {
    private static final HopGrid GRID = new HopGrid(48_000);
    private static final double TAKE_SECONDS = 120;

    @Param({"0.1", "0"})
    private double quietShare;

    private final Played played = new Played();
    private NoiseMeter live;
    private NoiseMeter heard;
    private ShortTimeSpectrum liveSpectrum;
    private ActivityReading activity;

    @Setup
    public void hearATake() {
        live = new NoiseMeter(GRID, NoiseMeter.USUAL_MEMORY_SECONDS);
        liveSpectrum = new ShortTimeSpectrum(GRID, live);
        heard = new NoiseMeter(GRID, NoiseMeter.USUAL_MEMORY_SECONDS);
        ShortTimeSpectrum spectrum = new ShortTimeSpectrum(GRID, heard);
        int hops = GRID.hopsIn(TAKE_SECONDS);
        for (long frames = 0; frames < (long) hops * GRID.hopFrames(); frames += AudioBlock.DEFAULT_FRAMES) {
            spectrum.accept(played.nextBlock());
        }
        byte[] states = new byte[hops];
        Arrays.fill(states, ActivityReading.PLAYING);
        int rest = (int) (quietShare * hops / 4);
        for (int r = 0; r < 4; r++) {
            Arrays.fill(states, r * hops / 4, r * hops / 4 + rest, ActivityReading.QUIET);
        }
        activity = new ActivityReading(GRID, 0, states, -80);
    }

    @Benchmark
    public ShortTimeSpectrum accept() {
        liveSpectrum.accept(played.nextBlock());
        return liveSpectrum;
    }

    @Benchmark
    public NoiseReading reading() {
        return heard.reading(activity);
    }
}
