package evenwood.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Looks up the partials of each single note in remembered narrow bands. One use, one thread.
 *
 * <p>How: the frames that lie wholly in a note are averaged over three parts of its life (up to 65 ms, 170 ms and 340 ms
 * after its first whole frame), because partials die away at different speeds. A partial is the power around a multiple of
 * the pitch; it counts when it stands 10 dB over the noise of the quiet parts, 6 dB over the gaps beside it and within
 * 50 dB of the note's strongest. A third octave counts when at least half of the partials in it do. Source: our choice;
 * checked on takes of known difference (docs/accuracy.md).
 * <p>Limits: partials are taken as harmonic; chords are left out.
 */
final class NotePartials {
    /** Ends of the parts, in hops after the note's first whole frame. */
    private static final double[] PART_ENDS_HOPS = {1.5, 4, 8};
    /** So many notes of one pitch tell enough; more would only cost time. */
    private static final int MOST_OF_A_KIND = 5;
    private static final double OVER_NOISE = 10;
    private static final double OVER_GAPS = 4;
    private static final int HIGHEST_WITH_GAPS = 8;
    private static final double LEAST_SHARE = 0.01;
    private static final double LEAST_POWER = 1e-11;
    private static final double LEAST_OF_STRONGEST = 1e-5;
    private static final double WIDEST_SPACING_SHARE = 0.45;
    private static final double WIDTH_SHARE = 0.025;
    private static final double LEAST_WIDTH_HZ = 20;
    private static final double GAP_SHARE = 0.1;
    private static final double LEAST_GAP_HZ = 8;

    private final HopGrid grid;
    private final NarrowBands bands;
    private final HopHistory history;
    private final double[] noise;

    NotePartials(HopGrid grid, NarrowBands bands, HopHistory history, ActivityReading activity) {
        this.grid = grid;
        this.bands = bands;
        this.history = history;
        noise = noise(activity);
    }

    List<NoteSpectrum> spectra(NotesReading notes) {
        int[][] counts = new int[128][PART_ENDS_HOPS.length];
        List<NoteSpectrum> spectra = new ArrayList<>();
        for (Note note : notes.notes()) {
            if (note.polyphonic() || note.midi() < 0 || note.midi() > 127) {
                continue;
            }
            for (int part = 0; part < PART_ENDS_HOPS.length; part++) {
                double[] power = counts[note.midi()][part] < MOST_OF_A_KIND ? power(note, part) : null;
                double[] partials = power == null ? new double[0] : partials(note.frequencyHz(), power);
                if (isOfThatPitch(partials)) {
                    counts[note.midi()][part]++;
                    spectra.add(spectrum(note, part, partials));
                }
            }
        }
        return spectra;
    }

    private double[] noise(ActivityReading activity) {
        double[] sums = new double[bands.count()];
        int hops = 0;
        for (long hop = Math.max(1, history.firstHop()); hop < history.endHop(); hop++) {
            if (activity.isQuiet(hop)) {
                history.addRowTo(hop, sums);
                hops++;
            }
        }
        for (int band = 0; band < sums.length; band++) {
            sums[band] /= Math.max(1, hops);
        }
        return sums;
    }

    /** Mean power of the note's part, null when no frame lies in it. */
    private double[] power(Note note, int part) {
        long first = (long) Math.ceil(note.startSeconds() / grid.hopSeconds()) + 1;
        long end = Math.min((long) (note.endSeconds() / grid.hopSeconds()), history.endHop());
        double from = part == 0 ? 0 : PART_ENDS_HOPS[part - 1];
        double[] sums = new double[bands.count()];
        int hops = 0;
        for (long hop = Math.max(first, history.firstHop()); hop < end; hop++) {
            if (hop - first >= from && hop - first < PART_ENDS_HOPS[part]) {
                history.addRowTo(hop, sums);
                hops++;
            }
        }
        for (int band = 0; band < sums.length; band++) {
            sums[band] /= Math.max(1, hops);
        }
        return hops == 0 ? null : sums;
    }

    /**
     * The partials that neither of two nor of three are multiples carry a hundredth of the power: otherwise the note lies an
     * octave higher than was thought, or two strings of a fifth ring together (98 and 147 Hz are partials 2 and 3 of a note of
     * 49 Hz that nobody played).
     */
    private static boolean isOfThatPitch(double[] partials) {
        double own = 0;
        double all = 0;
        double odd = 0;
        for (int k = 1; k <= Math.min(HIGHEST_WITH_GAPS, partials.length); k++) {
            all += partials[k - 1];
            odd += k % 2 == 1 ? partials[k - 1] : 0;
            own += k % 2 != 0 && k % 3 != 0 ? partials[k - 1] : 0;
        }
        return all > 0 && odd > LEAST_SHARE * (all - odd) && own > LEAST_SHARE * all;
    }

    private NoteSpectrum spectrum(Note note, int part, double[] partials) {
        List<ThirdOctave> thirds = ThirdOctave.FROM_50_HZ_TO_16_KHZ;
        double weakest = LEAST_OF_STRONGEST * Arrays.stream(partials).max().orElse(0);
        double[] sums = new double[thirds.size()];
        int[] heard = new int[thirds.size()];
        int[] all = new int[thirds.size()];
        for (int k = 1; k <= partials.length; k++) {
            int third = ThirdOctave.containing(k * note.frequencyHz()).index() - thirds.get(0).index();
            if (third >= 0 && third < thirds.size()) {
                all[third]++;
                if (partials[k - 1] > weakest) {
                    heard[third]++;
                    sums[third] += partials[k - 1];
                }
            }
        }
        double[] levels = new double[thirds.size()];
        for (int third = 0; third < levels.length; third++) {
            heard[third] = 2 * heard[third] >= all[third] ? heard[third] : 0;
            levels[third] = heard[third] == 0 ? Double.NEGATIVE_INFINITY : 10 * Math.log10(sums[third] / heard[third]);
        }
        return new NoteSpectrum(NoteName.number(note.frequencyHz()), part, note.levelDbfs(), levels, heard);
    }

    /** Power of each partial; 0 for one that was not heard. */
    private double[] partials(double pitchHz, double[] power) {
        double[] partials = new double[(int) (highestHz() / pitchHz)];
        for (int k = 1; k <= partials.length; k++) {
            double hz = k * pitchHz;
            double width = Math.min(WIDEST_SPACING_SHARE * pitchHz, Math.max(WIDTH_SHARE * hz, LEAST_WIDTH_HZ));
            double sum = 0;
            double quiet = 0;
            double highest = 0;
            for (int band = bands.firstFrom(hz - width); band < bands.count() && bands.centreHz(band) <= hz + width; band++) {
                sum += power[band];
                quiet += noise[band];
                highest = Math.max(highest, power[band]);
            }
            boolean standsOut = k > HIGHEST_WITH_GAPS || highest >= OVER_GAPS * Math.min(gap(hz - pitchHz / 2, pitchHz, power), gap(hz + pitchHz / 2, pitchHz, power));
            partials[k - 1] = standsOut && sum > OVER_NOISE * quiet && sum > LEAST_POWER ? sum - quiet : 0;
        }
        return partials;
    }

    private double highestHz() {
        List<ThirdOctave> thirds = ThirdOctave.FROM_50_HZ_TO_16_KHZ;
        return Math.min(thirds.get(thirds.size() - 1).upperHz(), bands.centreHz(bands.count() - 1));
    }

    /** The least power between two partials. */
    private double gap(double hz, double pitchHz, double[] power) {
        double half = Math.max(GAP_SHARE * pitchHz, LEAST_GAP_HZ);
        double least = Double.MAX_VALUE;
        for (int band = bands.firstFrom(hz - half); band < bands.count() && bands.centreHz(band) <= hz + half; band++) {
            least = Math.min(least, power[band]);
        }
        return least == Double.MAX_VALUE ? 0 : least;
    }
}
