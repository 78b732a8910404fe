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
        SlotPower mean = SlotPower.mean(memory, grid, this::isQuiet);
        LineSpectrum low = LowLineSpectrum.of(quiet, lowRateHz, lowTopHz);
        LineSpectrum high = mean.lineSpectrum();
        List<SpectralLine> lowLines = low.lines();
        List<SpectralLine> highLines = high.lines();
        Optional<MainsFit> mains = new MainsFinder(lowLines).find();
        markLines(low, lowLines, mains);
        markLines(high, highLines, mains);
        List<Tone> tones = new ToneFinder(low, high, mains).find(lowLines, highLines);
        MainsLevels levels = mains.map(fit -> MainsLevels.of(low, fit, lowLines)).orElse(MainsLevels.NONE);
        double hiss = low.noisePower(LOWEST_HZ, low.topHz()) + high.noisePower(low.topHz(), mean.topHz());
        return new NoiseReading(mean.floorDbfs(), mean.floorDbfsA(),
            mains.map(this::frequencyHz).map(OptionalDouble::of).orElse(OptionalDouble.empty()),
            mains.map(MainsFit::uncertaintyHz).orElse(0.0), Decibels.ofPower(levels.hum()),
            Decibels.ofPower(levels.buzz()), Decibels.ofPower(hiss), tones,
            activity.quietSeconds(), NoiseReading.Method.QUIET_PARTS);
    }

    private NoiseReading ofAlwaysThere(PieceSpectra newest) {
        SlotPower always = SlotPower.alwaysThere(memory, grid);
        LineSpectrum high = always.lineSpectrum();
        markLines(high, high.lines(), Optional.empty());
        Optional<LockedMains> mains = LockedMains.search(newest, lowTopHz);
        MainsLevels levels = mains.map(LockedMains::levels).orElse(MainsLevels.NONE);
        double hiss = high.noisePower(LOWEST_HZ, always.topHz());
        return new NoiseReading(always.floorDbfs(), always.floorDbfsA(),
            mains.map(m -> OptionalDouble.of(m.frequencyHz())).orElse(OptionalDouble.empty()),
            mains.map(LockedMains::sigmaHz).orElse(0.0), Decibels.ofPower(levels.hum()), Decibels.ofPower(levels.buzz()),
            Decibels.ofPower(hiss), List.of(), 0, NoiseReading.Method.MINIMA);
    }

    /** The quiet parts are moments; the mains wanders. Through the playing it is followed over the whole last minute. */
    private double frequencyHz(MainsFit quiet) {
        PieceSpectra newest = newestPieces(PIECE_HOPS);
        if (newest.pieces() < LEAST_LOCKED_PIECES) {
            return quiet.frequencyHz();
        }
        HumLock lock = new HumLock(newest, quiet.strongestLowHarmonic(), quiet.frequencyHz());
        boolean agrees = Math.abs(lock.frequencyHz() - quiet.frequencyHz()) < MOST_CORRECTION_HZ;
        return agrees && lock.steadyDb() < STEADY_DB ? lock.frequencyHz() : quiet.frequencyHz();
    }

    private PieceSpectra newestPieces(int stepHops) {
        long from = memory.endHop() - (long) (MOST_LOCKED_PIECES - 1) * stepHops - PIECE_HOPS;
        return new PieceSpectra(LowStretches.newest(memory, Math.max(0, from), PIECE_HOPS, stepHops), lowRateHz, lowTopHz);
    }

    private static void markLines(LineSpectrum spectrum, List<SpectralLine> lines, Optional<MainsFit> mains) {
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
