package evenwood.measure;

import java.util.ArrayList;
import java.util.List;

/**
 * Carries a note-by-note difference on above the highest partials that stood out, where only the attack and the noise of the
 * strings are left: there the average spectra of both takes are compared.
 *
 * <p>How: bands over 2 kHz and over the highest known one that stand above the noise in both takes, their plain difference
 * set on to that of the three highest known bands. Uncertainty: plain differences of other songs on the same source are off
 * by 1.9 dB there (RMS, tuning sources), neighbours alike (correlation 0.66); 3 dB for each band by itself stands for both.
 * Source: our choice; docs/accuracy.md.
 */
final class TopBands {
    private static final double LOWEST_HZ = 2000;
    private static final int LEANS_ON = 3;
    private static final double HALF_WIDTH_DB = 1.96 * 3;

    private TopBands() { }

    static ToneDifference added(ToneDifference known, LongTermSpectrumReading heard, LongTermSpectrumReading wanted) {
        int count = known.bands().size();
        if (count < LEANS_ON) {
            return known;
        }
        ThirdOctave highest = known.bands().get(count - 1).band();
        double offset = 0;
        for (ToneDifference.Band band : known.bands().subList(count - LEANS_ON, count)) {
            offset += (plainDb(band.band(), heard, wanted) - band.differenceDb()) / LEANS_ON;
        }
        List<ToneDifference.Band> all = new ArrayList<>(known.bands());
        for (BandLevel level : Double.isFinite(offset) ? heard.bands() : List.<BandLevel>of()) {
            boolean above = level.band().compareTo(highest) > 0 && level.band().centreHz() > LOWEST_HZ;
            if (above && level.isAboveNoise() && of(level.band(), wanted).isAboveNoise()) {
                double difference = plainDb(level.band(), heard, wanted) - offset;
                all.add(new ToneDifference.Band(level.band(), difference, HALF_WIDTH_DB, NotewiseDifference.TOLERANCE_DB, 1));
            }
        }
        return new ToneDifference(all);
    }

    private static double plainDb(ThirdOctave band, LongTermSpectrumReading heard, LongTermSpectrumReading wanted) {
        return of(band, heard).relativeDb() - of(band, wanted).relativeDb();
    }

    /** Silent where the take's sample rate has no such band. */
    private static BandLevel of(ThirdOctave band, LongTermSpectrumReading spectrum) {
        return spectrum.bands().stream().filter(level -> level.band().equals(band)).findFirst()
            .orElse(new BandLevel(band, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, 0, 0, Double.NEGATIVE_INFINITY));
    }
}
