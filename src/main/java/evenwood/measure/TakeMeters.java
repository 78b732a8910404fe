package evenwood.measure;

import evenwood.sound.AudioBlock;
import evenwood.sound.Decibels;
import evenwood.sound.SoundFormat;

/**
 * All meters of one take on one common spectrum.
 *
 * <p>In: mono blocks of any size. Out: {@link TakeReadings}.
 * <p>Limits: meters that work by hops remember the last {@code rememberedSeconds}; peaks and loudness remember the whole
 * take. Sound at the very end that does not fill a hop counts for peaks and loudness only.
 * <p>Thread: one owner. {@link #accept} never allocates, locks, logs, or touches files.
 */
public final class TakeMeters {
    private static final double NOW_SECONDS = 0.25;
    private static final double SHORTEST_MEMORY_SECONDS = 10;

    /** Narrow bands take 12 kB a second; a few minutes tell what an instrument's notes are made of. */
    private static final double LONGEST_NARROW_MEMORY_SECONDS = 600;

    private final SoundFormat format;
    private final HopGrid grid;
    private final LevelMeter level;
    private final TruePeakMeter truePeak;
    private final LoudnessMeter loudness;
    private final ActivityMeter activity;
    private final NoteMeter notes;
    private final NarrowBandMeter narrowBands;
    private final LongTermSpectrumMeter spectrum;
    private final NoiseMeter noise;
    private final ClickMeter clicks;
    private final DropoutMeter dropouts;
    private final DistortionMeter distortion;
    private final RingingMeter ringing;
    private final ShortTimeSpectrum shortTime;
    private long frames;

    public TakeMeters(SoundFormat format, double rememberedSeconds) {
        this.format = format;
        int rateHz = format.sampleRateHz();
        grid = new HopGrid(rateHz);
        int hops = grid.hopsIn(Math.max(SHORTEST_MEMORY_SECONDS, rememberedSeconds)) + 2;
        level = new LevelMeter(grid, hops);
        truePeak = new TruePeakMeter(grid, hops);
        loudness = new LoudnessMeter(rateHz, 1);
        activity = ActivityMeter.onSharedSpectrum(grid, hops);
        notes = NoteMeter.onSharedSpectrum(grid, hops);
        narrowBands = new NarrowBandMeter(grid, Math.min(hops, grid.hopsIn(LONGEST_NARROW_MEMORY_SECONDS)));
        spectrum = new LongTermSpectrumMeter(grid, hops);
        noise = new NoiseMeter(grid, NoiseMeter.USUAL_MEMORY_SECONDS);
        clicks = new ClickMeter(rateHz);
        dropouts = new DropoutMeter(rateHz);
        distortion = new DistortionMeter(format, grid, hops);
        ringing = new RingingMeter(grid);
        shortTime = new ShortTimeSpectrum(grid, activity, notes, narrowBands, spectrum, noise, ringing);
    }

    /** Hears one block and keeps none of it. [audio thread] */
    public void accept(AudioBlock block) {
        level.accept(block);
        truePeak.accept(block);
        loudness.accept(block);
        activity.accept(block);
        notes.accept(block);
        clicks.accept(block);
        dropouts.accept(block);
        distortion.accept(block);
        shortTime.accept(block);
        frames += block.frames();
    }

    /** Sound is missing between the last block and the next: the step there is nobody's click. [audio thread] */
    public void gap() {
        clicks.gap();
        dropouts.gap();
    }

    /** The newest readings of a take that goes on. [owner's thread] */
    public TakeReadings readings(String name) {
        return readings(name, loudness.reading());
    }

    /** Older readings with their last moment, peaks, loudness and howl renewed: quick enough for every drawn picture. [owner's thread] */
    public TakeReadings renewed(TakeReadings older) {
        return older.at(info(older.take().name()), now(), level.reading(), truePeak.reading(), loudness.reading(),
            ringing.reading());
    }

    /** The readings of a take that is over: loudness range as the standard wants it for files. [owner's thread] */
    public TakeReadings readingsOfFinishedTake(String name) {
        return readings(name, loudness.readingOfFinishedTake());
    }

    private TakeReadings readings(String name, LoudnessReading loud) {
        ActivityReading active = activity.reading();
        NotesReading played = notes.reading(active);
        return new TakeReadings(info(name), now(), level.reading(),
            truePeak.reading(), loud, active, played, narrowBands.reading(played, active), notes.dynamics(active, played),
            spectrum.reading(active), noise.reading(active), clicks.reading(), dropouts.reading(), distortion.reading(), ringing.reading());
    }

    private TakeInfo info(String name) {
        return new TakeInfo(name, format, (double) frames / format.sampleRateHz());
    }

    private NowReading now() {
        double peak = Double.NEGATIVE_INFINITY;
        double power = 0;
        long first = Math.max(truePeak.firstHop(), truePeak.endHop() - grid.hopsIn(NOW_SECONDS));
        for (long hop = first; hop < truePeak.endHop(); hop++) {
            peak = Math.max(peak, truePeak.hopPeakDbtp(hop));
            power += Decibels.toPower(level.hopRmsDbfs(hop)) / (truePeak.endHop() - first);
        }
        return new NowReading(peak, Decibels.ofPower(power), notes.pitchNow());
    }
}
