package evenwood.measure;

import evenwood.sound.Decibels;
import java.util.List;
import java.util.function.Predicate;

/**
 * The long-term average spectrum of what was played.
 *
 * @param bands          third octaves from 50 Hz to 16 kHz as far as they lie below half the sample rate, lowest first
 * @param overallDbfs    all bands together, plain RMS while playing; −Infinity when nothing was played
 * @param playingSeconds how much playing it rests on
 * @param blocks         into how many stretches that was cut for the confidence
 * @param noiseKnown     whether there was enough quiet to know the noise in each band
 */
public record LongTermSpectrumReading(List<BandLevel> bands, double overallDbfs, double playingSeconds, int blocks, boolean noiseKnown) {
    /** Under ten blocks a bootstrap tells little; Source: reference §12.2, Künsch 1989 for the method. */
    public static final int LEAST_BLOCKS = 10;

    // Our choice: between the trade words "full" and "muddy" (about 224 Hz), and between "nasal" and "harsh" (about 2.2 kHz).
    private static final double LOW_ENDS_HZ = new ThirdOctave(-7).upperHz();
    private static final double HIGH_BEGINS_HZ = new ThirdOctave(4).lowerHz();

    public LongTermSpectrumReading {
        bands = List.copyOf(bands);
        if (Double.isNaN(overallDbfs)) {
            throw new IllegalArgumentException("long-term spectrum: overallDbfs is no number; −Infinity stands for silence");
        }
    }

    public boolean isSilent() {
        return overallDbfs == Double.NEGATIVE_INFINITY;
    }

    /** Too little playing for a confidence: all half-widths are infinite. */
    public boolean isTooShort() {
        return blocks < LEAST_BLOCKS;
    }

    /** The bands 50 to 200 Hz together against all. */
    public double lowDb() {
        return sumDb(level -> level.band().upperHz() <= LOW_ENDS_HZ);
    }

    /** The bands 250 Hz to 2 kHz together against all. */
    public double midDb() {
        return sumDb(level -> level.band().upperHz() > LOW_ENDS_HZ && level.band().lowerHz() < HIGH_BEGINS_HZ);
    }

    /** The bands from 2.5 kHz together against all. */
    public double highDb() {
        return sumDb(level -> level.band().lowerHz() >= HIGH_BEGINS_HZ);
    }

    /** Level of all bands together with a frequency weighting; −Infinity when silent. */
    public double weightedDbfs(Weighting weighting) {
        return Decibels.ofPower(bands.stream()
            .mapToDouble(level -> Decibels.toPower(level.levelDbfs()) * weighting.powerGain(level.band().centreHz())).sum());
    }

    private double sumDb(Predicate<BandLevel> wanted) {
        return Decibels.ofPower(bands.stream().filter(wanted).mapToDouble(level -> Decibels.toPower(level.relativeDb())).sum());
    }
}
