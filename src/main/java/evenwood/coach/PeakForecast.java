package evenwood.coach;

import evenwood.eq.BandResponse;
import evenwood.eq.EqChain;
import evenwood.measure.BandLevel;
import evenwood.measure.TakeReadings;
import evenwood.sound.Decibels;
import java.util.List;

/**
 * How high the peaks of a take get behind an equaliser. Two ways: {@link #fromSpectrum by its spectrum}, or by sending the
 * take itself through, which whoever has the take can do.
 */
public interface PeakForecast {
    /** How far the hardest stroke may be from the spectrum's forecast: our estimate, not counted on real takes. */
    double SPECTRUM_UNCERTAINTY_DB = 3;

    PeakAfter after(EqChain change);

    /**
     * How: the peak moves as the power of the playing moves, its long-term spectrum changed band by band. Limits: the hardest
     * stroke may have another spectrum than the average.
     */
    static PeakForecast fromSpectrum(TakeReadings readings) {
        return change -> {
            List<BandLevel> bands = readings.spectrum().bands();
            double[] effect = new BandResponse(bands.stream().map(BandLevel::band).toList(),
                readings.take().format().sampleRateHz()).db(change);
            double before = 0;
            double after = 0;
            for (int i = 0; i < effect.length; i++) {
                double power = Decibels.toPower(bands.get(i).relativeDb());
                before += power;
                after += power * Decibels.toPower(effect[i]);
            }
            double moved = before == 0 ? change.gainDb() : Decibels.ofPower(after / before);
            return new PeakAfter(readings.truePeak().truePeakDbtp() + moved, change.filters().isEmpty() ? 0 : SPECTRUM_UNCERTAINTY_DB);
        };
    }
}
