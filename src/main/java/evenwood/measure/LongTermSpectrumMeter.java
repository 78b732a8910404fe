package evenwood.measure;

import java.util.List;

/**
 * How bass, middle and treble stand to each other while somebody plays: the long-term average spectrum in third octaves.
 *
 * <p>In: the {@link ShortTimeSpectrum}, hop by hop. Out: {@link LongTermSpectrumReading} over the playing hops of an
 * {@link ActivityReading}, levels in dBFS (plain RMS), silence −Infinity.
 * <p>How: bands of IEC 61260-1:2014 from 50 Hz to 16 kHz as far as they lie below half the sample rate; the lowest by
 * filters on a decimated signal ({@link LowBands}), the others by sums of bins ({@link BinBand}).
 * <p>Limits: class 1 mask met at every rate (ThirdOctaveMaskReferenceTest). Row k shows what was heard in hops k−1 and k;
 * the 50 Hz band comes one hop later. Only the last {@code capacityHops} are remembered.
 * <p>Thread: one owner. {@link #spectrum} never allocates, locks, logs, or touches files.
 */
public final class LongTermSpectrumMeter implements ShortTimeSpectrum.Listener {
    private final HopGrid grid;
    private final List<ThirdOctave> bands;
    private final int lowBandCount;
    private final LowBands lowBands;
    private final BinBand[] binBands;
    private final HopHistory history;

    public LongTermSpectrumMeter(HopGrid grid, int capacityHops) {
        this.grid = grid;
        double binWidthHz = grid.sampleRateHz() / (2.0 * grid.hopFrames());
        bands = ThirdOctave.FROM_50_HZ_TO_16_KHZ.stream().filter(band -> band.upperHz() <= grid.sampleRateHz() / 2.0).toList();
        lowBandCount = (int) bands.stream().filter(band -> band.centreHz() < LowBands.HIGHEST_CENTRE_BINS * binWidthHz).count();
        lowBands = new LowBands(grid, bands.subList(0, lowBandCount));
        binBands = bands.stream().skip(lowBandCount)
            .map(band -> new BinBand(band.lowerHz(), band.upperHz(), binWidthHz, grid.hopFrames() + 1))
            .toArray(BinBand[]::new);
        history = new HopHistory(capacityHops, bands.size());
    }

    /** Hears one spectrum and keeps its band powers. [audio thread] */
    @Override
    public void spectrum(long hop, ShortTimeSpectrum spectrum) {
        while (history.endHop() < hop) {
            history.append(); // hop 0 ends before the first spectrum
        }
        history.append();
        lowBands.accept(spectrum);
        for (int i = 0; i < lowBandCount; i++) {
            history.set(hop, i, (float) lowBands.power(i));
        }
        float[] power = spectrum.power();
        for (int i = 0; i < binBands.length; i++) {
            history.set(hop, lowBandCount + i, (float) binBands[i].sum(power));
        }
    }

    /** The bands that exist at this sample rate, lowest first. */
    public List<ThirdOctave> bands() {
        return bands;
    }

    /** The oldest hop whose band powers are still known. */
    public long firstHop() {
        return history.firstHop();
    }

    /** One past the newest hop. */
    public long endHop() {
        return history.endHop();
    }

    /** Mean square in a band ({@code bands().get(band)}) around a hop, for comparing takes piece by piece. */
    public double bandPower(long hop, int band) {
        return history.get(hop, band);
    }

    /** The spectrum of what was played so far, with confidence. [owner's thread] */
    public LongTermSpectrumReading reading(ActivityReading activity) {
        return new PlayedSpectrum(history, bands, activity).reading();
    }

    public void reset() {
        history.reset();
        lowBands.reset();
    }
}
