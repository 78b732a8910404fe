package evenwood.measure;

import evenwood.sound.Decibels;
import java.util.ArrayList;
import java.util.List;

/** Makes a {@link LongTermSpectrumReading} of remembered band powers and of when somebody played. One use, one thread. */
final class PlayedSpectrum {
    private static final double SHORTEST_BLOCK_SECONDS = 1;
    private static final double LONGEST_BLOCK_SECONDS = 3;
    private static final int WANTED_BLOCKS = 30;
    /** Keeps the bootstrap of a long take as quick as that of a short one; its blocks become longer instead. */
    private static final int MOST_BLOCKS = 60;
    /** The 50 Hz filter has died away by 60 dB and the windows have let go of the last note. */
    private static final int HOPS_AFTER_PLAYING = 4;
    private static final double LEAST_QUIET_SECONDS = 0.25;
    /** 1 − 10^(−6/10): the most that is taken off for noise, as in ISO 3744. */
    private static final double LEAST_LEFT = 1 - Decibels.toPower(-BandLevel.LEAST_SIGNAL_TO_NOISE_DB);

    private final HopHistory history;
    private final List<ThirdOctave> bands;
    private final ActivityReading activity;
    private final long firstHop;
    private final long endHop;
    private final double[] noise;
    private boolean noiseKnown;

    PlayedSpectrum(HopHistory history, List<ThirdOctave> bands, ActivityReading activity) {
        this.history = history;
        this.bands = bands;
        this.activity = activity;
        firstHop = Math.max(1, Math.max(history.firstHop(), activity.firstHop()));
        endHop = Math.min(history.endHop(), activity.firstHop() + activity.states().length);
        noise = noise();
    }

    LongTermSpectrumReading reading() {
        int hops = playingHops();
        double playingSeconds = hops * activity.grid().hopSeconds();
        int blocks = blocks(playingSeconds);
        double[][] blockMeans = blockMeans(hops, Math.max(1, Math.min(blocks, hops)));
        double[] played = mean(blockMeans);
        double[] clean = clean(played.clone());
        double overall = sum(clean);
        boolean tooShort = blocks < LongTermSpectrumReading.LEAST_BLOCKS;
        double[][] draws = tooShort || overall == 0 ? null : cleanDraws(blockMeans);
        double outsideShare = draws == null ? 0 : BlockBootstrap.outsideShare(blocks);
        double factor = draws == null ? 1 : BlockBootstrap.likenessFactor(residuals(blockMeans, played, false));
        double relativeFactor = draws == null ? 1 : BlockBootstrap.likenessFactor(residuals(blockMeans, played, true));
        List<BandLevel> levels = new ArrayList<>(bands.size());
        for (int i = 0; i < bands.size(); i++) {
            levels.add(new BandLevel(bands.get(i), Decibels.ofPower(clean[i]),
                overall == 0 ? Double.NEGATIVE_INFINITY : Decibels.ofPower(clean[i] / overall),
                factor * halfWidthDb(draws, i, false, outsideShare), relativeFactor * halfWidthDb(draws, i, true, outsideShare),
                signalToNoiseDb(played[i], noise[i])));
        }
        return new LongTermSpectrumReading(levels, Decibels.ofPower(overall), playingSeconds, blocks, noiseKnown);
    }

    private int playingHops() {
        int hops = 0;
        for (long hop = firstHop; hop < endHop; hop++) {
            if (activity.isPlaying(hop)) {
                hops++;
            }
        }
        return hops;
    }

    private static int blocks(double playingSeconds) {
        double wanted = Math.max(SHORTEST_BLOCK_SECONDS, Math.min(LONGEST_BLOCK_SECONDS, playingSeconds / WANTED_BLOCKS));
        return (int) (playingSeconds / Math.max(wanted, playingSeconds / MOST_BLOCKS));
    }

    /** Equal blocks of playing hops in their order; what lies between them is cut out. */
    private double[][] blockMeans(int hops, int blocks) {
        double[][] means = new double[blocks][bands.size()];
        int[] counts = new int[blocks];
        long played = 0;
        for (long hop = firstHop; hop < endHop; hop++) {
            if (activity.isPlaying(hop)) {
                int block = (int) (played++ * blocks / hops);
                history.addRowTo(hop, means[block]);
                counts[block]++;
            }
        }
        for (int block = 0; block < blocks; block++) {
            divide(means[block], Math.max(1, counts[block]));
        }
        return means;
    }

    private double[] noise() {
        double[] sums = new double[bands.size()];
        int hops = 0;
        int quietRun = 0;
        for (long hop = firstHop; hop < endHop; hop++) {
            quietRun = activity.isQuiet(hop) ? quietRun + 1 : 0;
            if (quietRun > HOPS_AFTER_PLAYING) {
                history.addRowTo(hop, sums);
                hops++;
            }
        }
        noiseKnown = hops * activity.grid().hopSeconds() >= LEAST_QUIET_SECONDS;
        divide(sums, hops);
        return noiseKnown ? sums : new double[bands.size()];
    }

    private double[] clean(double[] powers) {
        for (int i = 0; i < powers.length; i++) {
            powers[i] = Math.max(powers[i] - noise[i], powers[i] * LEAST_LEFT);
        }
        return powers;
    }

    private double[][] cleanDraws(double[][] blockMeans) {
        double[][] draws = new BlockBootstrap(blockMeans).means();
        if (noiseKnown) {
            for (double[] draw : draws) {
                clean(draw);
            }
        }
        return draws;
    }

    private static double halfWidthDb(double[][] draws, int band, boolean relative, double outsideShare) {
        if (draws == null) {
            return Double.POSITIVE_INFINITY;
        }
        double[] powers = new double[draws.length];
        for (int i = 0; i < draws.length; i++) {
            powers[i] = relative ? draws[i][band] / sum(draws[i]) : draws[i][band];
        }
        return BlockBootstrap.halfWidthDb(powers, outsideShare);
    }

    /** By how much each block is off, in power, or against what its own loudness lets expect. */
    private static double[][] residuals(double[][] blockMeans, double[] played, boolean relative) {
        double whole = sum(played);
        double[][] residuals = new double[blockMeans.length][played.length];
        for (int block = 0; block < blockMeans.length; block++) {
            double expected = relative ? sum(blockMeans[block]) / whole : 1;
            for (int i = 0; i < played.length; i++) {
                residuals[block][i] = blockMeans[block][i] - expected * played[i];
            }
        }
        return residuals;
    }

    private static double signalToNoiseDb(double played, double noise) {
        if (played == 0) {
            return Double.NEGATIVE_INFINITY;
        }
        return noise == 0 ? Double.POSITIVE_INFINITY : Decibels.ofPower(played / noise);
    }

    private static double[] mean(double[][] rows) {
        double[] mean = new double[rows[0].length];
        for (double[] row : rows) {
            for (int i = 0; i < mean.length; i++) {
                mean[i] += row[i] / rows.length;
            }
        }
        return mean;
    }

    private static void divide(double[] values, int by) {
        for (int i = 0; i < values.length; i++) {
            values[i] /= by;
        }
    }

    private static double sum(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum;
    }
}
