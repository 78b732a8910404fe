package evenwood.judge;

import evenwood.measure.TakeReadings;
import evenwood.measure.ToneDifference;
import evenwood.rig.Pickup;
import evenwood.wiring.ChainReport;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * Whether the pickup sees too low an impedance: the bass falls by 6 dB for every octave from a corner down, and the level is lower
 * than it should be.
 *
 * <p>How: Bayes. "Loaded" is a first-order high-pass whose corner may lie anywhere from an octave over what is expected, or over the
 * lowest note, to 10 kHz, every octave alike; against it stand "as it should be" and each word of tone with any amount ({@link
 * ToneEvidence}), all with the heavy tails by which instruments differ. Only bands from the lowest note on that was
 * heard count. The level counts too: against the prediction where the chain and its gain are known, else loosely against the level a player would set; with no chain at all it must be too quiet to be named. Source: the corner is 1/(2πRC), see {@code ImpedanceRule}; how common the fault is
 * before anything is heard is our choice.
 * <p>Limits: without an instrument that has a target there is nothing to compare with. Without a chain a quiet player with a thin
 * instrument does the same, so it never gets sure.
 *
 * @param probability    that it is so
 * @param heardCornerHz  the likeliest corner; empty when it is likelier that none was lost
 * @param expectedHz     where the chain's own corner lies; 0 when nobody knows
 * @param lowestNoteHz   the lowest that was played
 */
record LoadedPickup(double probability, OptionalDouble heardCornerHz, double expectedHz, double lowestNoteHz) {
    private static final double HIGHEST_CORNER_HZ = 10_000;
    private static final double HEARING_BEGINS_HZ = 20;
    /** A third-octave band holds notes from 0.89 of its centre on (IEC 61260-1). */
    private static final double LOWEST_NOTE_PART = 0.89;
    private static final double STEP = Math.pow(2, 0.25);
    private static final double SLIGHT_PROBABILITY = 0.4;
    private static final double CLEAR_PROBABILITY = 0.75;
    private static final double STRONG_PROBABILITY = 0.9;
    /** Two octaves over the lowest note little is left of the instrument. */
    private static final double STRONG_CORNER = 4;
    private static final double PLAYING_ENDS_HZ = 4000;
    /** Half of all takes are as they should be, the rest share the other words (as ToneCalibration's training takes). */
    private static final double CLEAN_SHARE = 0.5;
    private static final double PIEZO_PRIOR = 0.15;
    private static final double OTHER_PRIOR = 0.05;
    /** A chain that is predicted to load its pickup mostly does. */
    private static final double PREDICTED_LOG_ODDS = Math.log(0.8 / 0.2);

    /** Where nobody knows the chain: gains stand anywhere within some 24 dB of where they should; our choice. */
    private static final double UNKNOWN_GAIN_DEVIATION_DB = 12;
    private static final double UNKNOWN_CHAIN_PRIOR = 0.1;
    private static final double UNKNOWN_CHAIN_MOST = 0.85;

    /** With a chain nobody knows; empty when nothing can be said. */
    static Optional<LoadedPickup> of(TakeReadings readings, Optional<ToneComparison> tone, TargetWindow window) {
        if (tone.isEmpty() || tone.get().against() != ToneComparison.Against.INSTRUMENT || !readings.hasPlaying()) {
            return Optional.empty();
        }
        return ofUnknownChain(played(tone.get(), readings.noteSpectra().lowestHz()), aboveAimDb(readings, window));
    }

    /**
     * Only what was played can lack bass: under the lowest note that was heard there is none, whatever the pickup sees, and what a target
     * expects there is the body's noise.
     *
     * @param lowestHeardHz 0 when no note was heard
     */
    static ToneComparison played(ToneComparison tone, double lowestHeardHz) {
        if (lowestHeardHz <= tone.lowestNoteHz()) {
            return tone;
        }
        return new ToneComparison(tone.against(), tone.name(), lowestHeardHz, tone.spread(), tone.wantedDb(), new ToneDifference(tone.difference().bands().stream()
            .map(band -> band.centreHz() >= LOWEST_NOTE_PART * lowestHeardHz ? band
                : new ToneDifference.Band(band.band(), band.differenceDb(), band.uncertaintyDb(), band.toleranceDb(), 0)).toList()));
    }

    private static double aboveAimDb(TakeReadings readings, TargetWindow window) {
        return readings.truePeak().truePeakDbtp() - window.aimDbtp();
    }

    /** @param levelDb how much higher the peaks are than a player would set them */
    static Optional<LoadedPickup> ofUnknownChain(ToneComparison tone, double levelDb) {
        return of(tone, 0, OptionalDouble.of(levelDb), UNKNOWN_GAIN_DEVIATION_DB, UNKNOWN_CHAIN_PRIOR)
            .map(each -> new LoadedPickup(Math.min(UNKNOWN_CHAIN_MOST, each.probability), each.heardCornerHz, 0, each.lowestNoteHz));
    }

    /** Empty when nothing can be said. */
    static Optional<LoadedPickup> of(TakeReadings readings, Optional<ToneComparison> tone, TargetWindow window, ChainReport chain) {
        Pickup.Kind kind = chain.connection().pickup().kind();
        if (tone.isEmpty() || tone.get().against() != ToneComparison.Against.INSTRUMENT || kind.isMicrophone() || !readings.hasPlaying()) {
            return Optional.empty();
        }
        OptionalDouble predicted = WiringComparison.levelDb(readings, chain.main());
        return of(played(tone.get(), readings.noteSpectra().lowestHz()), chain.main().bassCornerHz().orElse(0), predicted.isPresent() ? predicted : OptionalDouble.of(aboveAimDb(readings, window)),
            predicted.isPresent() ? WiringComparison.deviationDb(chain) : UNKNOWN_GAIN_DEVIATION_DB, kind == Pickup.Kind.PIEZO ? PIEZO_PRIOR : OTHER_PRIOR);
    }

    /**
     * @param expectedHz where the chain's own corner lies; 0 when nobody knows
     * @param level      heard − predicted level; empty when nobody knows
     * @param deviation  of that level, dB
     * @param prior      how likely it is before anything is heard
     */
    static Optional<LoadedPickup> of(ToneComparison tone, double expectedHz, OptionalDouble level, double deviation, double prior) {
        ToneEvidence evidence = new ToneEvidence(shifted(tone.difference(), expectedHz), tone.spread(), tone.lowestNoteHz());
        return evidence.isEmpty() ? Optional.empty() : Optional.of(weighed(tone, evidence, expectedHz, level, deviation, prior));
    }

    private static LoadedPickup weighed(ToneComparison tone, ToneEvidence evidence, double expected, OptionalDouble level, double deviation, double prior) {
        double least = Math.max(2 * expected, 2 * tone.lowestNoteHz());
        double sum = 0;
        int count = 0;
        double best = Double.NEGATIVE_INFINITY;
        double bestHz = least;
        for (double corner = least; corner <= HIGHEST_CORNER_HZ; corner *= STEP) {
            double hz = corner;
            DoubleUnaryOperator more = frequency -> highPassDb(hz, frequency) - highPassDb(expected, frequency);
            double logRatio = evidence.logRatio(more) + levelLogRatio(level, deviation, meanDb(more, tone.lowestNoteHz()));
            sum += Math.exp(Math.min(300, logRatio));
            count++;
            if (logRatio > best) {
                best = logRatio;
                bestHz = corner;
            }
        }
        Map<ToneRegion, ToneEvidence.Support> others = evidence.supports();
        double other = others.values().stream().mapToDouble(support -> Math.exp(Math.min(300, support.logOdds()))).average().orElse(0);
        double odds = prior / (1 - prior) * (sum / count) / (CLEAN_SHARE + (1 - CLEAN_SHARE) * other);
        double loaded = odds / (1 + odds);
        boolean predicted = expected > tone.lowestNoteHz();
        double probability = predicted ? Math.max(loaded, asPredicted(tone, expected)) : loaded;
        OptionalDouble heard = loaded >= SLIGHT_PROBABILITY ? OptionalDouble.of(bestHz) : OptionalDouble.empty();
        return new LoadedPickup(Math.min(0.99, probability), heard, expected, tone.lowestNoteHz());
    }

    /** That the corner the chain predicts is really there, against none. */
    private static double asPredicted(ToneComparison tone, double expected) {
        ToneEvidence evidence = new ToneEvidence(tone.difference(), tone.spread(), tone.lowestNoteHz());
        return 1 / (1 + Math.exp(-PREDICTED_LOG_ODDS - evidence.logRatio(frequency -> highPassDb(expected, frequency))));
    }

    private static double levelLogRatio(OptionalDouble level, double deviation, double lossDb) {
        if (level.isEmpty()) {
            return 0;
        }
        double with = (level.getAsDouble() - lossDb) / deviation;
        double without = level.getAsDouble() / deviation;
        return 0.5 * (without * without - with * with);
    }

    /** As the chain's levels are counted: over the octaves from the lowest note to 4 kHz. */
    private static double meanDb(DoubleUnaryOperator db, double lowestHz) {
        double sum = 0;
        int count = 0;
        for (double hz = Math.min(lowestHz, PLAYING_ENDS_HZ / 2); hz <= PLAYING_ENDS_HZ; hz *= STEP) {
            sum += Math.pow(10, db.applyAsDouble(hz) / 10);
            count++;
        }
        return 10 * Math.log10(sum / count);
    }

    private static double highPassDb(double cornerHz, double frequencyHz) {
        return -10 * Math.log10(1 + Math.pow(cornerHz / frequencyHz, 2));
    }

    /** What is left when the chain's own corner is accounted for. */
    private static ToneDifference shifted(ToneDifference difference, double expectedHz) {
        return new ToneDifference(difference.bands().stream().map(band -> new ToneDifference.Band(band.band(),
            band.differenceDb() - highPassDb(expectedHz, band.centreHz()), band.uncertaintyDb(), band.toleranceDb(), band.weight())).toList());
    }

    /** @param quiet the level is low, though nobody knows what it should be  @param wiring beside what the chain should give, if that is known */
    Optional<Finding> finding(boolean quiet, Optional<WiringComparison> wiring) {
        if (probability < SLIGHT_PROBABILITY) {
            return Optional.empty();
        }
        double corner = heardCornerHz.orElse(expectedHz);
        Severity severity = probability >= STRONG_PROBABILITY && corner >= STRONG_CORNER * lowestNoteHz ? Severity.STRONG
            : probability >= CLEAR_PROBABILITY ? Severity.CLEAR : Severity.SLIGHT;
        return Optional.of(new Finding(Fault.LOADED_PICKUP, severity, probability, evidence(corner, quiet, wiring), Optional.of(new BandHz(HEARING_BEGINS_HZ, corner))));
    }

    private Statement evidence(double corner, boolean quiet, Optional<WiringComparison> wiring) {
        OptionalDouble level = wiring.map(WiringComparison::levelDb).orElse(OptionalDouble.empty());
        if (heardCornerHz.isEmpty()) {
            return Statement.of("loaded-pickup.predicted", corner, lowestNoteHz);
        }
        if (level.isEmpty() && quiet) {
            return Statement.of("loaded-pickup.evidence", corner);
        }
        return level.isPresent() && level.getAsDouble() < 0 ? Statement.of("loaded-pickup.lower", -level.getAsDouble(), corner)
            : Statement.of("loaded-pickup.bass", corner);
    }
}
