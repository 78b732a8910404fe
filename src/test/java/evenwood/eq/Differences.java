package evenwood.eq;

import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;

/** Tone differences made up for tests. */
public final class Differences {
    public static final int SAMPLE_RATE_HZ = 48_000;
    public static final List<ThirdOctave> BANDS = ThirdOctave.FROM_50_HZ_TO_16_KHZ;
    public static final BandResponse RESPONSE = new BandResponse(BANDS, SAMPLE_RATE_HZ);
    private static final double LOWEST_COUNTED_HZ = 79;
    private static final double HIGHEST_COUNTED_HZ = 10_100;

    private Differences() { }

    /** All bands alike but for the difference. */
    public static ToneDifference of(ToDoubleFunction<ThirdOctave> differenceDb, double uncertaintyDb, double toleranceDb) {
        return new ToneDifference(BANDS.stream()
            .map(band -> new ToneDifference.Band(band, differenceDb.applyAsDouble(band), uncertaintyDb, toleranceDb, 1)).toList());
    }

    /** What a chain does to an even spectrum. */
    public static ToneDifference of(EqChain chain, double uncertaintyDb, double toleranceDb) {
        double[] db = RESPONSE.db(chain);
        return of(band -> db[BANDS.indexOf(band)], uncertaintyDb, toleranceDb);
    }

    /** Root mean square from 80 Hz to 10 kHz, third octave by third octave, the common level taken off. */
    public static double rmsDb(List<Double> differenceDb) {
        double mean = 0;
        double square = 0;
        int n = 0;
        for (int i = 0; i < BANDS.size(); i++) {
            if (BANDS.get(i).centreHz() > LOWEST_COUNTED_HZ && BANDS.get(i).centreHz() < HIGHEST_COUNTED_HZ) {
                mean += differenceDb.get(i);
                square += differenceDb.get(i) * differenceDb.get(i);
                n++;
            }
        }
        return Math.sqrt(Math.max(0, square / n - mean / n * (mean / n)));
    }

    public static double rmsDb(ToneDifference difference) {
        return rmsDb(difference.bands().stream().map(ToneDifference.Band::differenceDb).toList());
    }

    /** One to three stages such as somebody might have turned: shelves, peaks, a high-pass; 3 to 12 dB. */
    public static EqChain someEq(SplittableRandom random) {
        List<EqFilter> stages = new ArrayList<>();
        int count = 1 + random.nextInt(3);
        for (int i = 0; i < count; i++) {
            double gainDb = (3 + 9 * random.nextDouble()) * (random.nextBoolean() ? 1 : -1);
            double part = random.nextDouble();
            stages.add(switch (random.nextInt(4)) {
                case 0 -> EqFilter.lowShelf(80 * Math.pow(5, part), EqFilter.BUTTERWORTH_Q, gainDb);
                case 1 -> EqFilter.highShelf(1500 * Math.pow(5, part), EqFilter.BUTTERWORTH_Q, gainDb);
                default -> EqFilter.peak(100 * Math.pow(60, part), 0.5 + 2.5 * random.nextDouble(), gainDb);
            });
        }
        return new EqChain(0, stages);
    }
}
