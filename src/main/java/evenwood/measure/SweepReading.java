package evenwood.measure;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What a box does to every frequency, and how hard it can be driven.
 *
 * @param points       its response while it is clean, lowest frequency first
 * @param levels       how clean it was at each level, quietest first
 * @param overloadSentDbfs  the level of the sweep from which on it adds 1 % of harmonics; empty when it stayed clean
 * @param overloadHeardDbfs the peak of the recording there
 */
public record SweepReading(List<Point> points, List<Level> levels, OptionalDouble overloadSentDbfs, OptionalDouble overloadHeardDbfs) {
    /** Twelfths of an octave around 1 kHz: 20 Hz to 20 kHz. */
    public static final int POINTS_PER_OCTAVE = 12;
    private static final int LOWEST_POINT = -68;
    private static final int HIGHEST_POINT = 52;

    /**
     * @param frequencyHz   where
     * @param levelDb       heard against sent
     * @param deviationDb   standard error from noise
     */
    public record Point(double frequencyHz, double levelDb, double deviationDb) { }

    /**
     * @param sentDbfs        peak of the sweep
     * @param heardPeakDbfs   peak of the recording of it
     * @param distortion      harmonics 2 to 5 against the tone, as an amount of 1, in the worst third octave; 0 when none rises from the noise
     * @param isRecordingFull whether the recording itself reached full scale, so that it says nothing about the box
     */
    public record Level(double sentDbfs, double heardPeakDbfs, double distortion, boolean isRecordingFull) { }

    public SweepReading {
        points = List.copyOf(points);
        levels = List.copyOf(levels);
    }

    /** The frequencies of the points, as far as a recording of that sample rate holds them. */
    public static double[] frequenciesHz(double sampleRateHz) {
        return java.util.stream.IntStream.rangeClosed(LOWEST_POINT, HIGHEST_POINT).mapToDouble(i -> 1000 * Math.pow(2, (double) i / POINTS_PER_OCTAVE))
            .filter(hz -> hz < 0.97 * Math.min(SineSweeps.HIGHEST_HZ, SineSweeps.HIGHEST_SHARE * sampleRateHz)).toArray();
    }
}
