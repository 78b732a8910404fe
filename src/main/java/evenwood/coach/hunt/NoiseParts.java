package evenwood.coach.hunt;

import evenwood.judge.Noticeability;
import evenwood.measure.NoiseReading;
import evenwood.measure.Tone;
import evenwood.rig.HuntTable.Part;
import evenwood.sound.Decibels;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.hipparchus.stat.StatUtils;

/**
 * The four parts of the noise while nobody plays, as a hunt compares them.
 *
 * <p>How: from several short stretches. Hum, buzz and hiss are the median of the stretches, so that one knock does not count; tones
 * are the mean of their powers, because a phone sends only part of the time. Deviation: of the median by the median distance from
 * it (normal noise: 1.858 · MAD/√n, e.g. Huber, Robust Statistics, from memory), of the mean by the stretches' standard error.
 *
 * @param levelDbfs   of each part, plain RMS; a part that was not found lies 30 dB under the hiss, for it cannot be louder
 * @param deviationDb standard deviation of that level
 */
public record NoiseParts(Map<Part, Double> levelDbfs, Map<Part, Double> deviationDb) {
    /** A line as wide as a second's spectrum lets it be stands out of hiss 43 dB louder (20 kHz in 1 Hz); 13 dB to be told for sure. */
    private static final double UNDER_HISS_DB = 30;
    /** Quieter than any converter: digital silence counts as this. */
    private static final double SILENCE_DBFS = -140;
    /** Playing as loud as the target window would have it (as in NoiseRule). */
    private static final double IMAGINED_PLAYING_DBFS = -24;
    private static final double MEDIAN_DEVIATION = 1.858;
    /** Measured once, nobody knows; as far as mains hum wanders in seconds, common practice. */
    private static final double SINGLE_DEVIATION_DB = 1;
    /** Something else in the room always hums or hisses a little. Our choice. */
    private static final double TOGETHER_DB = 20;
    private static final double UNSTEADY_DB = 3;

    public NoiseParts {
        levelDbfs = Map.copyOf(levelDbfs);
        deviationDb = Map.copyOf(deviationDb);
    }

    public static NoiseParts of(NoiseReading reading) {
        return of(List.of(reading));
    }

    /** @param stretches of one measurement, at least one */
    public static NoiseParts of(List<NoiseReading> stretches) {
        Map<Part, Double> levels = new EnumMap<>(Part.class);
        Map<Part, Double> deviations = new EnumMap<>(Part.class);
        for (Part part : Part.values()) {
            double[] each = stretches.stream().mapToDouble(level(part)).toArray();
            double level = part == Part.TONE ? meanDb(each) : StatUtils.percentile(each, 50);
            levels.put(part, level);
            deviations.put(part, each.length == 1 ? SINGLE_DEVIATION_DB : part == Part.TONE ? errorOfMeanDb(each) : errorOfMedianDb(each, level));
        }
        return new NoiseParts(levels, deviations);
    }

    private static ToDoubleFunction<NoiseReading> level(Part part) {
        return reading -> Math.max(Math.max(SILENCE_DBFS, reading.hissDbfs() - UNDER_HISS_DB), switch (part) {
            case HUM -> reading.humDbfs();
            case BUZZ -> reading.buzzDbfs();
            case HISS -> reading.hissDbfs();
            case TONE -> Decibels.ofPower(reading.tones().stream().mapToDouble(Tone::levelDbfs).map(Decibels::toPower).sum());
        });
    }

    /** The part that would be noticed most, by its distance to the limit of being noticed. */
    public Part worst() {
        return Arrays.stream(Part.values()).max(Comparator.comparingDouble(this::prominenceDb)).orElseThrow();
    }

    /** The noticeable parts that may well come from where the worst one does: noticed nearly as much. */
    Set<Part> together() {
        double least = prominenceDb(worst()) - TOGETHER_DB;
        return noticeable().stream().filter(part -> prominenceDb(part) >= least).collect(Collectors.toUnmodifiableSet());
    }

    private double prominenceDb(Part part) {
        return levelDbfs.get(part) + limitDb(part);
    }

    /** The parts that would be noticed under usual playing at a usual level; empty when there is nothing to hunt. */
    public Set<Part> noticeable() {
        return Arrays.stream(Part.values()).filter(part -> IMAGINED_PLAYING_DBFS - levelDbfs.get(part) < limitDb(part)).collect(Collectors.toUnmodifiableSet());
    }

    /** Something moved, was touched or was played while it was measured. */
    public boolean isUnsteady() {
        return deviationDb.get(Part.HISS) > UNSTEADY_DB;
    }

    private static double limitDb(Part part) {
        return switch (part) {
            case HUM -> Noticeability.HUM.slightDb();
            case BUZZ -> Noticeability.BUZZ.slightDb();
            case HISS -> Noticeability.HISS.slightDb();
            case TONE -> Noticeability.TONE.slightDb();
        };
    }

    private static double errorOfMedianDb(double[] each, double median) {
        double[] distances = Arrays.stream(each).map(level -> Math.abs(level - median)).toArray();
        return MEDIAN_DEVIATION * StatUtils.percentile(distances, 50) / Math.sqrt(each.length);
    }

    private static double meanDb(double[] each) {
        return Decibels.ofPower(StatUtils.mean(powers(each)));
    }

    /** Standard error of the mean power, in decibels of that mean. */
    private static double errorOfMeanDb(double[] each) {
        double[] powers = powers(each);
        return 10 / Math.log(10) * Math.sqrt(StatUtils.variance(powers) / each.length) / StatUtils.mean(powers);
    }

    private static double[] powers(double[] levelsDb) {
        return Arrays.stream(levelsDb).map(Decibels::toPower).toArray();
    }
}
