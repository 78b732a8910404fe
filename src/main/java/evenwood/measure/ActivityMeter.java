package evenwood.measure;

import evenwood.sound.AudioBlock;

/**
 * When somebody played and when the instrument rested.
 *
 * <p>In: mono blocks of any size. Out: {@link ActivityReading}, one state a hop.
 * <p>How: keeps the levels of third-octave bands hop by hop and decides only when asked, looking back over all it
 * remembers: {@link SteadyFloors} find the noise that is always there, {@link ActivityDecision} calls playing what rises
 * clear of it in some band and lasts longer than a click. Steady hum or hiss is never playing, however loud, because it
 * does not rise above itself. Source: our choice, after the minimum statistics of Martin 2001 (the noise is what is left
 * when the wanted sound pauses).
 * <p>Limits: a hop is about 43 ms; edges are NEITHER for a hop or two. Less than a second of sound is not decided.
 * <p>Thread: one owner. {@link #accept} never allocates, locks, logs, or touches files.
 */
public final class ActivityMeter implements ShortTimeSpectrum.Listener {
    private static final int LOWEST_LEVEL_BIN = 2;

    private final HopGrid grid;
    private final ActivityBands bands;
    private final HopHistory levels;
    private final HopHistory impulses;
    private final HopImpulse impulse;
    private final ShortTimeSpectrum ownSpectrum;

    public ActivityMeter(HopGrid grid, int capacityHops) {
        this(grid, capacityHops, false);
    }

    private ActivityMeter(HopGrid grid, int capacityHops, boolean sharedSpectrum) {
        this.grid = grid;
        bands = new ActivityBands(grid);
        levels = new HopHistory(capacityHops, bands.count() + 1);
        impulses = new HopHistory(capacityHops, 1);
        impulse = new HopImpulse(grid, impulses);
        ownSpectrum = sharedSpectrum ? null : new ShortTimeSpectrum(grid, this);
    }

    /**
     * A meter that makes no spectrum of its own: it must be a listener of one that hears the same blocks as
     * {@link #accept}.
     */
    public static ActivityMeter onSharedSpectrum(HopGrid grid, int capacityHops) {
        return new ActivityMeter(grid, capacityHops, true);
    }

    /** Hears one block and keeps none of it. [audio thread] */
    public void accept(AudioBlock block) {
        impulse.accept(block);
        if (ownSpectrum != null) {
            ownSpectrum.accept(block);
        }
    }

    /** Hears one spectrum. [audio thread] */
    @Override
    public void spectrum(long hop, ShortTimeSpectrum spectrum) {
        if (levels.endHop() == 0) {
            keep(spectrum.power()); // Hop 0 ends no frame of its own; the first frame covers it.
        }
        keep(spectrum.power());
    }

    /** Playing or quiet, for all that is remembered. [owner's thread] */
    public ActivityReading reading() {
        return new ActivityDecision(grid, bands, levels, impulses).reading();
    }

    public void reset() {
        levels.reset();
        impulses.reset();
        impulse.reset();
        if (ownSpectrum != null) {
            ownSpectrum.reset();
        }
    }

    private void keep(float[] power) {
        long row = levels.append();
        double sum = 0;
        for (int k = LOWEST_LEVEL_BIN; k < power.length; k++) {
            sum += power[k];
        }
        for (int b = 0; b < bands.count(); b++) {
            levels.set(row, b, bands.levelDb(b, power));
        }
        levels.set(row, bands.count(), ActivityBands.toDb(sum));
    }
}
