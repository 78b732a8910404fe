package evenwood.measure;

/**
 * The partials of one note during one part of its life, gathered by third octaves.
 *
 * @param pitchNumber as MIDI counts, with cents as fractions: 60 = C4
 * @param part        which part of the note's life; parts of the same number are comparable, see {@link NotePartials}
 * @param levelDbfs   of the note, as in {@link Note}
 * @param partialDb   for each band of {@link ThirdOctave#FROM_50_HZ_TO_16_KHZ} the mean power of the partials in it, dBFS;
 *                    −Infinity where none was heard. Not to be changed
 * @param partials    how many partials that rests on. Not to be changed
 */
public record NoteSpectrum(double pitchNumber, int part, double levelDbfs, double[] partialDb, int[] partials) {
    /** The nearest note. */
    public int midi() {
        return (int) Math.rint(pitchNumber);
    }

    boolean has(int band) {
        return partials[band] > 0;
    }
}
