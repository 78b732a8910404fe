package evenwood.measure;

import java.util.List;

/**
 * What the notes of a take were made of, as far as they were played one at a time.
 *
 * @param spectra in order of time, several a note
 */
public record NoteSpectraReading(List<NoteSpectrum> spectra) {
    public static final NoteSpectraReading NONE = new NoteSpectraReading(List.of());

    public NoteSpectraReading {
        spectra = List.copyOf(spectra);
    }

    /** Pitch of the lowest note; 0 when there is none. */
    public double lowestHz() {
        return spectra.stream().mapToDouble(NoteSpectrum::pitchNumber).min().stream().map(NoteName::frequencyHz).findFirst().orElse(0);
    }

    /** Different notes, lowest first, as MIDI counts. */
    public int[] midis() {
        return spectra.stream().mapToInt(NoteSpectrum::midi).distinct().sorted().toArray();
    }
}
