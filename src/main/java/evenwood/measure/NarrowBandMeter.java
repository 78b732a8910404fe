package evenwood.measure;

/**
 * Remembers the sound so finely over frequency that the partials of every note can be looked up afterwards.
 *
 * <p>In: the {@link ShortTimeSpectrum}, hop by hop. Out: {@link NoteSpectraReading} of the notes of a {@link NotesReading}.
 * <p>How: mean squares in {@link NarrowBands}; row k shows what was heard in hops k−1 and k.
 * <p>Limits: only the last {@code capacityHops} are remembered.
 * <p>Thread: one owner. {@link #spectrum} never allocates, locks, logs, or touches files.
 */
public final class NarrowBandMeter implements ShortTimeSpectrum.Listener {
    private final HopGrid grid;
    private final NarrowBands bands;
    private final HopHistory history;

    public NarrowBandMeter(HopGrid grid, int capacityHops) {
        this.grid = grid;
        bands = new NarrowBands(grid);
        history = new HopHistory(capacityHops, bands.count());
    }

    /** Hears one spectrum and keeps its narrow bands. [audio thread] */
    @Override
    public void spectrum(long hop, ShortTimeSpectrum spectrum) {
        while (history.endHop() < hop) {
            history.append(); // hop 0 ends before the first spectrum
        }
        history.append();
        float[] power = spectrum.power();
        for (int band = 0; band < bands.count(); band++) {
            history.set(hop, band, bands.power(band, power));
        }
    }

    /** The partials of what was played one note at a time. [owner's thread] */
    public NoteSpectraReading reading(NotesReading notes, ActivityReading activity) {
        return new NoteSpectraReading(new NotePartials(grid, bands, history, activity).spectra(notes));
    }

    public void reset() {
        history.reset();
    }
}
