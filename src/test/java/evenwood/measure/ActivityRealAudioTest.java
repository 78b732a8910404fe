package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.takes.PackagedTakes;
import evenwood.takes.RoomNoise;
import evenwood.takes.Take;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Soundcheck takes of every packaged instrument with noise added. The truth is the take before the noise: a hop sounds
 * when the clean take is 6 dB above the noise, and rests when it is 40 dB under it (nothing left above the noise even in
 * a third octave); what lies between, and 150 ms around the edges, is not judged.
 */
class ActivityRealAudioTest {
    /** A third of the takes for each chain, another third for the next. */
    private static final int EVERY = 3;

    enum Chain {
        LOW_NOISE(-8, -75, Double.NEGATIVE_INFINITY),
        HISS(-8, -45, Double.NEGATIVE_INFINITY),
        HUM(-8, -75, -50),
        SOFT_OVER_HUM(-30, -75, -50),
        VERY_QUIET(-50, -75, Double.NEGATIVE_INFINITY);

        final double peakDbfs;
        final double hissDbfs;
        final double humDbfs;

        Chain(double peakDbfs, double hissDbfs, double humDbfs) {
            this.peakDbfs = peakDbfs;
            this.hissDbfs = hissDbfs;
            this.humDbfs = humDbfs;
        }
    }

    @ParameterizedTest
    @EnumSource
    void playingAndRestAreToldApart(Chain chain) {
        StringBuilder table = new StringBuilder();
        long[] total = new long[4];
        List<Take> takes = PackagedTakes.catalogue();
        for (int i = chain.ordinal() % EVERY; i < takes.size(); i += EVERY) {
            long[] score = score(takes.get(i).withPeak(chain.peakDbfs), chain, i);
            table.append(String.format(Locale.ROOT, "| %-44s | %5.1f %% of %5d | %5.1f %% of %5d |%n", takes.get(i), percent(score[0], score[1]), score[1],
                percent(score[2], score[3]), score[3]));
            for (int k = 0; k < 4; k++) {
                total[k] += score[k];
            }
        }
        table.append(String.format(Locale.ROOT, "| %-44s | %5.1f %% of %5d | %5.1f %% of %5d |%n", "all", percent(total[0], total[1]), total[1],
            percent(total[2], total[3]), total[3]));
        AccuracyTable.write("activity-" + chain.name().toLowerCase(Locale.ROOT), table);
        assertThat(percent(total[0], total[1])).as("sounding hops called playing\n%s", table).isGreaterThanOrEqualTo(95);
        assertThat(percent(total[2], total[3])).as("resting hops called quiet\n%s", table).isGreaterThanOrEqualTo(95);
    }

    /** The rests cut out of every third take (what is 40 dB under its loudest hop goes), joined over 5 ms, over −70 dBFS. */
    @Test
    void playingWithoutARestIsPlayingAndHasNoQuiet() {
        StringBuilder table = new StringBuilder();
        double playing = 0;
        double quiet = 0;
        double whole = 0;
        List<Take> takes = PackagedTakes.catalogue();
        for (int i = 0; i < takes.size(); i += EVERY) {
            HopGrid grid = new HopGrid(takes.get(i).sampleRateHz());
            float[] sound = withoutRests(PackagedTakes.samples(takes.get(i)), grid);
            RoomNoise.add(sound, grid.sampleRateHz(), -70, i);
            ActivityMeter meter = new ActivityMeter(grid, 5000);
            Blocks.feed(sound, meter::accept);
            ActivityReading reading = meter.reading();
            double seconds = (double) sound.length / grid.sampleRateHz();
            table.append(String.format(Locale.ROOT, "| %-44s | %5.1f s | playing %5.1f s | quiet %4.1f s |%n", takes.get(i), seconds,
                reading.playingSeconds(), reading.quietSeconds()));
            playing += reading.playingSeconds();
            quiet += reading.quietSeconds();
            whole += seconds;
        }
        AccuracyTable.write("activity-no-rest", table);
        assertThat(playing / whole).as("share called playing\n%s", table).isGreaterThanOrEqualTo(0.95);
        assertThat(quiet / whole).as("share called quiet\n%s", table).isLessThanOrEqualTo(0.01);
    }

    private static float[] withoutRests(float[] clean, HopGrid grid) {
        int hop = grid.hopFrames();
        int fade = grid.sampleRateHz() / 200;
        float[] kept = new float[clean.length];
        int length = 0;
        double[] level = new double[clean.length / hop];
        for (int h = 0; h < level.length; h++) {
            for (int i = 0; i < hop; i++) {
                level[h] += clean[h * hop + i] * clean[h * hop + i];
            }
        }
        double least = Arrays.stream(level).max().orElse(0) * 1e-4;
        for (int h = 0; h < level.length; h++) {
            if (level[h] >= least) {
                int at = Math.max(0, length - (h > 0 && level[h - 1] < least ? fade : 0));
                for (int i = 0; i < hop; i++) {
                    float part = at + i < length ? (float) i / fade : 1;
                    kept[at + i] = kept[at + i] * (1 - part) + clean[h * hop + i] * part;
                }
                length = at + hop;
            }
        }
        return Arrays.copyOf(kept, length);
    }

    private static long[] score(Take take, Chain chain, int seed) {
        float[] clean = PackagedTakes.samples(take);
        SoundSketch sketch = new SoundSketch(take.sampleRateHz(), clean.length / (double) take.sampleRateHz(), seed);
        if (chain.humDbfs > Double.NEGATIVE_INFINITY) {
            sketch.hum(seed % 2 == 0 ? 50.02 : 59.97, chain.humDbfs);
        }
        for (int i = 0; i < clean.length; i++) {
            sketch.samples[i] += clean[i];
        }
        RoomNoise.add(sketch.samples, take.sampleRateHz(), chain.hissDbfs, seed);
        HopGrid grid = new HopGrid(take.sampleRateHz());
        ActivityMeter meter = new ActivityMeter(grid, 5000);
        sketch.into(meter::accept, 4096);
        ActivityReading reading = meter.reading();
        int[] truth = truth(clean, grid, Math.max(chain.hissDbfs, chain.humDbfs), chain.hissDbfs);
        long[] score = new long[4];
        for (int hop = 0; hop < Math.min(truth.length, reading.states().length); hop++) {
            if (truth[hop] == 1) {
                score[1]++;
                score[0] += reading.isPlaying(hop) ? 1 : 0;
            } else if (truth[hop] == -1) {
                score[3]++;
                score[2] += reading.isQuiet(hop) ? 1 : 0;
            }
        }
        return score;
    }

    /** 1 sounds, −1 rests, 0 not judged. */
    private static int[] truth(float[] clean, HopGrid grid, double noiseDbfs, double hissDbfs) {
        int hops = clean.length / grid.hopFrames();
        int[] raw = new int[hops];
        for (int hop = 0; hop < hops; hop++) {
            double sum = 0;
            for (int i = 0; i < grid.hopFrames(); i++) {
                double x = clean[hop * grid.hopFrames() + i];
                sum += x * x;
            }
            double level = 10 * Math.log10(sum / grid.hopFrames());
            raw[hop] = level > noiseDbfs + 6 ? 1 : level < hissDbfs - 40 ? -1 : 0;
        }
        int[] truth = raw.clone();
        int edge = (int) Math.ceil(0.15 / grid.hopSeconds());
        for (int hop = 0; hop < hops; hop++) {
            for (int near = Math.max(0, hop - edge); near <= Math.min(hops - 1, hop + edge); near++) {
                if (raw[near] != raw[hop]) {
                    truth[hop] = 0;
                }
            }
        }
        return truth;
    }

    private static double percent(long part, long whole) {
        return whole == 0 ? 100 : 100.0 * part / whole;
    }
}
