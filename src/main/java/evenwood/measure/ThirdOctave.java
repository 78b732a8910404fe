package evenwood.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One third-octave band: where it lies, where it ends, and what people call it.
 *
 * <p>How: base-10 system, exact centre 1000·G^(index/3) Hz with G = 10^(3/10), edges half a band to either side.
 * Source: IEC 61260-1:2014 eq. 1–5; names from ISO 266 (R10 series).
 *
 * @param index 0 is the 1 kHz band; −13 is 50 Hz, 12 is 16 kHz
 */
public record ThirdOctave(int index) implements Comparable<ThirdOctave> {
    private static final double REFERENCE_HZ = 1000;
    private static final int BANDS_PER_DECADE = 10;
    private static final double[] R10 = {1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8};
    private static final int LOWEST_INDEX = -20;
    private static final int HIGHEST_INDEX = 20;

    /** The bands of the long-term spectrum: 50 Hz to 16 kHz. */
    public static final List<ThirdOctave> FROM_50_HZ_TO_16_KHZ = range(50, 16_000);

    public ThirdOctave {
        if (index < LOWEST_INDEX || index > HIGHEST_INDEX) {
            throw new IllegalArgumentException("third-octave band: index=" + index + ", but " + LOWEST_INDEX + " (10 Hz) to "
                + HIGHEST_INDEX + " (100 kHz) are known");
        }
    }

    /** The band a frequency falls into; a frequency on an edge belongs to the upper band. */
    public static ThirdOctave containing(double frequencyHz) {
        if (!(frequencyHz > 0)) {
            throw new IllegalArgumentException("third-octave band: frequencyHz=" + frequencyHz + ", but it must be positive");
        }
        return new ThirdOctave((int) Math.floor(BANDS_PER_DECADE * Math.log10(frequencyHz / REFERENCE_HZ) + 0.5));
    }

    /** All bands between two nominal frequencies, both included. */
    public static List<ThirdOctave> range(double lowestNominalHz, double highestNominalHz) {
        List<ThirdOctave> bands = new ArrayList<>();
        for (int i = containing(lowestNominalHz).index; i <= containing(highestNominalHz).index; i++) {
            bands.add(new ThirdOctave(i));
        }
        return List.copyOf(bands);
    }

    public double centreHz() {
        return REFERENCE_HZ * Math.pow(10, index / (double) BANDS_PER_DECADE);
    }

    public double lowerHz() {
        return REFERENCE_HZ * Math.pow(10, (index - 0.5) / BANDS_PER_DECADE);
    }

    public double upperHz() {
        return REFERENCE_HZ * Math.pow(10, (index + 0.5) / BANDS_PER_DECADE);
    }

    /** The rounded frequency people use for it: 31.5, 1250, 16000. */
    public double nominalHz() {
        int decade = Math.floorDiv(index, BANDS_PER_DECADE);
        return Math.rint(R10[Math.floorMod(index, BANDS_PER_DECADE)] * REFERENCE_HZ * Math.pow(10, decade) * 100) / 100;
    }

    /** The nominal frequency in words: "31.5 Hz", "1.25 kHz". */
    public String nominalName() {
        double hz = nominalHz();
        return hz < REFERENCE_HZ ? plain(hz) + " Hz" : plain(hz / REFERENCE_HZ) + " kHz";
    }

    @Override
    public int compareTo(ThirdOctave other) {
        return Integer.compare(index, other.index);
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number)
            : String.format(Locale.ROOT, "%.2f", number).replaceAll("0+$", "");
    }
}
