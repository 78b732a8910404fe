package evenwood.measure;

/**
 * Hum, buzz, hiss and tones: what the rig adds when nobody plays.
 *
 * <p>In: one {@link ShortTimeSpectrum} a hop, as its listener. Out: {@link NoiseReading}, plain RMS in dBFS, given the
 * {@link ActivityReading} that says when nobody played.
 * <p>How: keeps the newest and the quietest of the take ({@link NoiseMemory}); at reading time a fine line spectrum of
 * the quiet parts up to 2 kHz shows mains harmonics and other lines, the spectra of the hops show what is above.
 * <p>Limits: mains within 0.02 Hz, hum within 1 dB from 0.4 s of quiet on (NoiseMeterReferenceTest). Whole hops only.
 * <p>Thread: one owner. {@link #spectrum} never allocates, locks, logs, or touches files.
 */
public final class NoiseMeter implements ShortTimeSpectrum.Listener {
    /** Two minutes: the newest one, and the quietest one of all before. */
    public static final double USUAL_MEMORY_SECONDS = 120;
    private static final double TOP_HZ = 20_000;

    private final HopGrid grid;
    private final LowRateStream lowRate;
    private final NoiseMemory memory;

    public NoiseMeter(HopGrid grid, double memorySeconds) {
        this.grid = grid;
        lowRate = new LowRateStream(grid);
        int slots = Math.max(4, grid.hopsIn(memorySeconds) / NoiseMemory.HOPS_PER_SLOT);
        double binHz = grid.sampleRateHz() / (2.0 * grid.hopFrames());
        int bins = (int) Math.min(grid.hopFrames() + 1, Math.ceil(TOP_HZ / binHz) + 2);
        memory = new NoiseMemory(slots, bins);
    }

    /** Hears one hop and keeps a copy of what it needs. [audio thread] */
    @Override
    public void spectrum(long hop, ShortTimeSpectrum spectrum) {
        if (hop == 1) {
            keep(0, spectrum, 0);
        }
        keep(hop, spectrum, grid.hopFrames());
    }

    /** What has been heard so far; {@link NoiseReading#NOTHING} before the second hop. [owner's thread] */
    public NoiseReading reading(ActivityReading activity) {
        return new NoiseAnalysis(grid, lowRate.rateHz(), lowRate.topHz(), memory, activity).reading();
    }

    public void reset() {
        memory.reset();
        lowRate.reset();
    }

    private void keep(long hop, ShortTimeSpectrum spectrum, int from) {
        memory.open(hop);
        int offset = (int) (hop % NoiseMemory.HOPS_PER_SLOT) * LowRateStream.FRAMES_PER_HOP;
        lowRate.accept(spectrum.frame(), from, memory.lowOfCurrent(), offset);
        memory.addPower(spectrum.power());
    }
}
