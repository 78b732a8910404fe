package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Whether a 95 % interval holds the truth 95 times in a hundred, and how wide it is for stationary noise.
 *
 * <p>Source of the width: Welch 1967, variance of averaged Hann spectra at half overlap, K_eff = 0.947 K, and ν = 2·K_eff
 * ·(bins in the band)/1.5 degrees of freedom. {@code -Devenwood.print=true} prints the table of docs/accuracy.md.
 */
class LongTermSpectrumCoverageReferenceTest {
    private static final int RATE_HZ = 8_000;
    private static final HopGrid GRID = new HopGrid(RATE_HZ);
    private static final int SEEDS = 300;

    private enum Sound {
        /** The same noise all the time. */
        STATIONARY {
            @Override
            float[] of(long seed, double seconds) {
                return Signals.noise(seed, RATE_HZ, seconds, 0.1);
            }
        },
        /** Notes of 0.3 to 1.2 s; each has a strength and a brightness of its own, as playing has. */
        NOTES {
            @Override
            float[] of(long seed, double seconds) {
                SplittableRandom random = new SplittableRandom(seed);
                float[] sound = new float[(int) (seconds * RATE_HZ)];
                double smooth = 0;
                double dark = 0;
                double bright = 0;
                int noteEnds = 0;
                for (int i = 0; i < sound.length; i++) {
                    if (i == noteEnds) {
                        noteEnds += (int) (RATE_HZ * random.nextDouble(0.3, 1.2));
                        dark = 0.1 * Math.pow(10, random.nextDouble(-6, 6) / 20);
                        bright = 0.03 * Math.pow(10, random.nextDouble(-6, 6) / 20);
                    }
                    double white = random.nextGaussian();
                    smooth += 0.3 * (white - smooth);
                    sound[i] = (float) (dark * smooth + bright * white);
                }
                return sound;
            }
        };

        abstract float[] of(long seed, double seconds);
    }

    @ParameterizedTest(name = "{0}")
    @EnumSource(Sound.class)
    void nineInTenToNineteenInTwentyIntervalsHoldTheTruth(Sound sound) {
        for (double seconds : new double[] {12, 40}) {
            LongTermSpectrumReading[] readings = readings(sound, seconds);
            double level = coverage(readings, false);
            double relative = coverage(readings, true);
            print("%s, %.0f s: %d blocks, intervals that hold the truth: level %.1f %%, relative %.1f %%%n", sound, seconds,
                readings[0].blocks(), 100 * level, 100 * relative);
            assertThat(level).as("level, %s, %s s", sound, seconds).isBetween(0.90, 0.98);
            assertThat(relative).as("relative level, %s, %s s", sound, seconds).isBetween(0.90, 0.98);
        }
    }

    @Test
    void ofStationaryNoiseTheWidthIsThatOfTheory() {
        LongTermSpectrumReading[] readings = readings(Sound.STATIONARY, 40);
        double binHz = RATE_HZ / 2.0 / GRID.hopFrames();
        for (int i = 0; i < readings[0].bands().size(); i++) {
            int band = i;
            ThirdOctave octave = readings[0].bands().get(band).band();
            double hops = readings[0].playingSeconds() / GRID.hopSeconds();
            double freedom = 2 * 0.947 * hops * (octave.upperHz() - octave.lowerHz()) / binHz / 1.5;
            double theoryDb = 1.96 * 4.343 * Math.sqrt(2 / freedom);
            double meanDb = IntStream.range(0, SEEDS).mapToDouble(s -> readings[s].bands().get(band).halfWidthDb()).average().orElseThrow();
            print("%s: half-width %.2f dB, theory %.2f dB%n", octave.nominalName(), meanDb, theoryDb);
            // The filters of the lowest bands weigh time evenly, which Hann frames at half overlap do not quite: within 12 %.
            assertThat(meanDb / theoryDb).as(octave.nominalName()).isBetween(0.85, 1.20);
        }
    }

    private static LongTermSpectrumReading[] readings(Sound sound, double seconds) {
        return IntStream.range(0, SEEDS).parallel().mapToObj(seed -> {
            LongTermSpectrumMeter meter = new LongTermSpectrumMeter(GRID, GRID.hopsIn(seconds));
            Blocks.feed(sound.of(seed + 1, seconds), new ShortTimeSpectrum(GRID, meter)::accept);
            return meter.reading(Signals.all(GRID, meter.endHop(), ActivityReading.PLAYING));
        }).toArray(LongTermSpectrumReading[]::new);
    }

    /** Share of intervals, over seeds and bands, that hold the level of all seeds together. */
    private static double coverage(LongTermSpectrumReading[] readings, boolean relative) {
        int bands = readings[0].bands().size();
        double[] truth = new double[bands];
        double all = 0;
        for (LongTermSpectrumReading reading : readings) {
            for (int band = 0; band < bands; band++) {
                double power = Math.pow(10, reading.bands().get(band).levelDbfs() / 10) / SEEDS;
                truth[band] += power;
                all += power;
            }
        }
        int held = 0;
        for (LongTermSpectrumReading reading : readings) {
            for (int band = 0; band < bands; band++) {
                BandLevel level = reading.bands().get(band);
                double missDb = relative ? level.relativeDb() - 10 * Math.log10(truth[band] / all) : level.levelDbfs() - 10 * Math.log10(truth[band]);
                held += Math.abs(missDb) <= (relative ? level.relativeHalfWidthDb() : level.halfWidthDb()) ? 1 : 0;
            }
        }
        return held / (double) (bands * readings.length);
    }

    private static void print(String format, Object... values) {
        if (Boolean.getBoolean("evenwood.print")) {
            System.out.printf(Locale.ROOT, format, values);
        }
    }
}
