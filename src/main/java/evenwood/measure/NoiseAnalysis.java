package evenwood.measure;

import evenwood.sound.Decibels;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One look at what is kept: from spectra to a {@link NoiseReading}. Made, asked once and thrown away.
 *
 * <p>With quiet parts of a third of a second or more the lines and the floor are read from those; without, the mains is
 * locked on through the playing and the floor is what is always there, an upper bound.
 */
final class NoiseAnalysis {
    private static final double LOWEST_HZ = 20;
    /** 1.4 s pieces: lines 3 Hz apart are told apart, and the mains has not drifted. */
    private static final int PIECE_HOPS = 32;
    private static final int LEAST_QUIET_HOPS = 8;
    private static final int MOST_QUIET_PIECES = 24;
    private static final int MOST_LOCKED_PIECES = 48;
    private static final int LEAST_LOCKED_PIECES = 16;
    /** The lock may correct what the quiet parts say of the frequency by so much, not more. */
    private static final double MOST_CORRECTION_HZ = 0.15;
    private static final double STEADY_DB = 2;
    private static final double FOLLOWING_ERROR_HZ = 0.001;
    /** What the mains may have done while it could not be followed (reference §8.1: ±20 mHz in normal operation). */
    private static final double UNHEARD_WANDER_HZ = 0.01;
    private static final double MOSTLY = 0.9;
    /** 2^(1/6) − 2^(−1/6), over the centre (IEC 61260-1). */
    private static final double THIRD_OCTAVE_WIDTH = 0.2316;
    private static final double WHINE_EDGE_LOBES = 6;
    private static final int LEAST_SLOTS_FOR_QUANTILE = 8;
    private static final double CALM_SHARE = 0.4;
    /** A quantile near the middle knows about two thirds of what the mean knows; the choice of slots less. */
    private static final double QUANTILE_EFFICIENCY = 0.5;
    private static final double LOW_SHARE = 0.15;
    private static final double LOW_QUANTILE_EFFICIENCY = 0.25;

    private final HopGrid grid;
    private final double lowRateHz;
    private final double lowTopHz;
    private final NoiseMemory memory;
    private final ActivityReading activity;

    NoiseAnalysis(HopGrid grid, double lowRateHz, double lowTopHz, NoiseMemory memory, ActivityReading activity) {
        this.grid = grid;
        this.lowRateHz = lowRateHz;
        this.lowTopHz = lowTopHz;
        this.memory = memory;
        this.activity = activity;
    }

    NoiseReading reading() {
        LowStretches quiet = new LowStretches(memory, activity::isQuiet, PIECE_HOPS, MOST_QUIET_PIECES);
        if (quiet.pieceHops() >= LEAST_QUIET_HOPS) {
            return ofQuiet(quiet);
        }
        PieceSpectra newest = newestPieces(PIECE_HOPS / 2);
        return newest.pieces() < LEAST_LOCKED_PIECES ? NoiseReading.NOTHING : ofAlwaysThere(newest);
    }

    private NoiseReading ofQuiet(LowStretches quiet) {
        SlotSpectra slots = new SlotSpectra(memory, grid, this::isQuiet);
        double[] mean = slots.mean();
        LineSpectrum low = LowLineSpectrum.of(quiet, lowRateHz, lowTopHz);
        LineSpectrum high = calm(slots, mean);
        List<SpectralLine> lowLines = low.lines();
        List<SpectralLine> highLines = high.lines();
        Optional<MainsFit> mains = new MainsFinder(lowLines).find();
        markLines(low, lowLines, mains, Optional.empty());
        markLines(high, highLines, mains, Optional.empty());
        ToneFinder finder = new ToneFinder(low, high, slots, new SlotSpectra(memory, grid, slot -> true), mains);
        List<Tone> found = finder.find(lowLines, highLines);
        markLines(high, highLines, mains, finder.wandering());
        List<Tone> tones = heard(found, high);
        MainsLevels levels = mains.map(fit -> MainsLevels.of(low, fit, lowLines)).orElse(MainsLevels.NONE);
        double hiss = low.noisePower(LOWEST_HZ, low.topHz()) + high.noisePower(low.topHz(), slots.topHz());
        Optional<MainsFit> followed = mains.map(this::followed);
        return new NoiseReading(slots.levelDbfs(mean, Weighting.Z), slots.levelDbfs(mean, Weighting.A),
            followed.map(fit -> OptionalDouble.of(fit.frequencyHz())).orElse(OptionalDouble.empty()),
            followed.map(MainsFit::uncertaintyHz).orElse(0.0), Decibels.ofPower(levels.hum()),
            Decibels.ofPower(levels.buzz()), Decibels.ofPower(hiss), tones,
            activity.quietSeconds(), NoiseReading.Method.QUIET_PARTS);
    }

    /** The quiet slots without what only some of them have: clicks, and lines that wander past. */
    private static LineSpectrum calm(SlotSpectra slots, double[] mean) {
        if (slots.chosen() < LEAST_SLOTS_FOR_QUANTILE) {
            return slots.lineSpectrum(mean, 1);
        }
        double[] calm = slots.quantile(CALM_SHARE);
        double toMean = SlotSpectra.quantileToMean(CALM_SHARE);
        for (int k = 0; k < calm.length; k++) {
            calm[k] *= toMean;
        }
        return slots.lineSpectrum(calm, QUANTILE_EFFICIENCY);
    }

    private NoiseReading ofAlwaysThere(PieceSpectra newest) {
        SlotSpectra slots = new SlotSpectra(memory, grid, slot -> true);
        double[] low = slots.quantile(LOW_SHARE);
        double[] always = low.clone();
        double toMean = SlotSpectra.quantileToMean(LOW_SHARE);
        for (int k = 0; k < always.length; k++) {
            always[k] *= toMean;
        }
        LineSpectrum high = slots.lineSpectrum(always, LOW_QUANTILE_EFFICIENCY);
        Optional<LockedMains> mains = LockedMains.search(newest, lowTopHz);
        List<Tone> tones = heard(SteadyTones.find(high, low, slots.quantile(0.5), mains), high);
        markLines(high, high.lines(), Optional.empty(), Optional.empty());
        MainsLevels levels = mains.map(LockedMains::levels).orElse(MainsLevels.NONE);
        double hiss = high.noisePower(LOWEST_HZ, slots.topHz());
        return new NoiseReading(slots.levelDbfs(always, Weighting.Z), slots.levelDbfs(always, Weighting.A),
            mains.map(m -> OptionalDouble.of(m.frequencyHz())).orElse(OptionalDouble.empty()),
            mains.map(LockedMains::sigmaHz).orElse(0.0), Decibels.ofPower(levels.hum()), Decibels.ofPower(levels.buzz()),
            Decibels.ofPower(hiss), tones, 0, NoiseReading.Method.MINIMA);
    }

    /** The quiet parts are moments; the mains wanders. Through the playing it is followed over the whole last minute. */
    private MainsFit followed(MainsFit quiet) {
        PieceSpectra newest = newestPieces(PIECE_HOPS);
        if (newest.pieces() >= LEAST_LOCKED_PIECES) {
            HumLock lock = new HumLock(newest, quiet.strongestLowHarmonic(), quiet.frequencyHz());
            boolean agrees = Math.abs(lock.frequencyHz() - quiet.frequencyHz()) < MOST_CORRECTION_HZ;
            if (agrees && lock.steadyDb() < STEADY_DB) {
                return new MainsFit(lock.frequencyHz(), Math.hypot(lock.sigmaHz(), FOLLOWING_ERROR_HZ), quiet.lines());
            }
        }
        boolean all = activity.quietSeconds() > MOSTLY * activity.states().length * grid.hopSeconds();
        double unheardHz = all ? 0 : UNHEARD_WANDER_HZ;
        return new MainsFit(quiet.frequencyHz(), Math.hypot(quiet.uncertaintyHz(), unheardHz), quiet.lines());
    }

    private PieceSpectra newestPieces(int stepHops) {
        long from = memory.endHop() - (long) (MOST_LOCKED_PIECES - 1) * stepHops - PIECE_HOPS;
        return new PieceSpectra(LowStretches.newest(memory, Math.max(0, from), PIECE_HOPS, stepHops), lowRateHz, lowTopHz);
    }

    /** A tone weaker than the noise of its own third octave is hidden by it (about what an ear's critical band is wide). */
    private static List<Tone> heard(List<Tone> tones, LineSpectrum noise) {
        return tones.stream().filter(tone -> Decibels.toPower(tone.levelDbfs())
            > THIRD_OCTAVE_WIDTH * tone.frequencyHz() * noise.noiseAt(tone.frequencyHz())).toList();
    }

    private static void markLines(LineSpectrum spectrum, List<SpectralLine> lines, Optional<MainsFit> mains,
                                  Optional<WanderingTone> whine) {
        boolean[] marks = spectrum.noMarks();
        for (SpectralLine line : lines) {
            spectrum.mark(marks, line.frequencyHz(), spectrum.shape().lobeHz());
        }
        if (mains.isPresent()) {
            double f = mains.get().frequencyHz();
            for (int k = 1; k * f < spectrum.topHz(); k++) {
                spectrum.mark(marks, k * f, mains.get().reachHz(k, spectrum));
            }
        }
        if (whine.isPresent()) {
            double middleHz = (whine.get().lowHz() + whine.get().highHz()) / 2;
            spectrum.mark(marks, middleHz, whine.get().highHz() - middleHz + WHINE_EDGE_LOBES * spectrum.shape().lobeHz());
        }
        spectrum.refineNoise(marks);
    }

    private boolean isQuiet(int slot) {
        long first = memory.firstHop(slot);
        for (long hop = Math.max(0, first - 1); hop < first + NoiseMemory.HOPS_PER_SLOT; hop++) {
            if (!activity.isQuiet(hop)) {
                return false;
            }
        }
        return true;
    }
}
