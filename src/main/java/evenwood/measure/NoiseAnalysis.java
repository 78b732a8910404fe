package evenwood.measure;

import evenwood.sound.Decibels;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** One look at the kept quiet parts: from spectra to a {@link NoiseReading}. Made, asked once and thrown away. */
final class NoiseAnalysis {
    private static final double LOWEST_HZ = 20;
    private static final double TOP_HZ = 20_000;
    /** 1.4 s pieces: lines 3 Hz apart are told apart, and the mains has not drifted. */
    private static final int MOST_PIECE_HOPS = 32;
    private static final int LEAST_PIECE_HOPS = 8;
    private static final int MOST_PIECES = 24;

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
        LowStretches quiet = new LowStretches(memory, activity::isQuiet, MOST_PIECE_HOPS, MOST_PIECES);
        if (quiet.pieceHops() < LEAST_PIECE_HOPS) {
            return NoiseReading.NOTHING;
        }
        return ofQuiet(quiet);
    }

    private NoiseReading ofQuiet(LowStretches quiet) {
        MeanPower mean = quietPower();
        LineSpectrum low = LowLineSpectrum.of(quiet, lowRateHz, lowTopHz);
        LineSpectrum high = HighLineSpectrum.of(mean.power, mean.binHz, mean.frames);
        List<SpectralLine> lowLines = low.lines();
        List<SpectralLine> highLines = high.lines();
        Optional<MainsFit> mains = new MainsFinder(lowLines).find();
        markLines(low, lowLines, mains);
        markLines(high, highLines, mains);
        ToneFinder tones = new ToneFinder(low, high, mains);
        List<Tone> found = tones.find(lowLines, highLines);
        MainsLevels levels = mains.map(fit -> MainsLevels.of(low, fit, lowLines)).orElse(MainsLevels.NONE);
        double top = Math.min(TOP_HZ, grid.sampleRateHz() / 2.0);
        double hiss = low.noisePower(LOWEST_HZ, low.topHz()) + high.noisePower(low.topHz(), top);
        return new NoiseReading(mean.floorDbfs(top, false), mean.floorDbfs(top, true),
            mains.map(m -> OptionalDouble.of(m.frequencyHz())).orElse(OptionalDouble.empty()),
            mains.map(MainsFit::uncertaintyHz).orElse(0.0), Decibels.ofPower(levels.hum()),
            Decibels.ofPower(levels.buzz()), Decibels.ofPower(hiss), found,
            activity.quietSeconds(), NoiseReading.Method.QUIET_PARTS);
    }

    private static void markLines(LineSpectrum spectrum, List<SpectralLine> lines, Optional<MainsFit> mains) {
        boolean[] marks = spectrum.noMarks();
        double lobeHz = spectrum.shape().lobeHz();
        for (SpectralLine line : lines) {
            spectrum.mark(marks, line.frequencyHz(), lobeHz);
        }
        if (mains.isPresent()) {
            double f = mains.get().frequencyHz();
            for (int k = 1; k * f < spectrum.topHz(); k++) {
                spectrum.mark(marks, k * f, mains.get().reachHz(k, spectrum));
            }
        }
        spectrum.refineNoise(marks);
    }

    private MeanPower quietPower() {
        double[] mean = new double[memory.bins()];
        int slots = 0;
        for (int slot : memory.slotsInOrder()) {
            if (isQuiet(slot)) {
                slots++;
                float[] power = memory.power(slot);
                for (int k = 0; k < mean.length; k++) {
                    mean[k] += power[k];
                }
            }
        }
        for (int k = 0; k < mean.length; k++) {
            mean[k] /= slots;
        }
        return new MeanPower(mean, grid.sampleRateHz() / (2.0 * grid.hopFrames()), slots * NoiseMemory.HOPS_PER_SLOT);
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

    /** Mean square per bin over so many hops. */
    private record MeanPower(double[] power, double binHz, int frames) {
        double floorDbfs(double topHz, boolean weighted) {
            double sum = 0;
            for (int k = 1; k < power.length; k++) {
                double low = Math.max(LOWEST_HZ, (k - 0.5) * binHz);
                double high = Math.min(topHz, (k + 0.5) * binHz);
                double factor = weighted ? Weighting.A.powerGain(k * binHz) : 1;
                sum += power[k] * factor * Math.max(0, high - low) / binHz;
            }
            return Decibels.ofPower(sum);
        }
    }
}
