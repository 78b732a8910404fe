package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.Needs;
import evenwood.takes.PackagedTakes;
import evenwood.takes.Take;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Level, true peak and loudness of real instruments, as ffmpeg reads them too (a mono file is one channel for both).
 * Leaves its table in {@code target/accuracy/level-against-ffmpeg.md}, from where it goes to {@code docs/accuracy.md}.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LevelMeterRealAudioTest {
    private final List<String> table = new ArrayList<>();

    static List<Take> takes() {
        return PackagedTakes.oneEach();
    }

    @BeforeAll
    static void needsFfmpeg() {
        Needs.program("ffmpeg");
    }

    @Test
    void thereAreAtLeastTwentyTakes() {
        assertThat(takes()).hasSizeGreaterThanOrEqualTo(20);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("takes")
    void ffmpegReadsTheSame(Take take) {
        FfmpegLevels theirs = FfmpegLevels.of(PackagedTakes.take(take));
        float[] samples = PackagedTakes.samples(take);
        HopGrid grid = new HopGrid(take.sampleRateHz());
        LevelMeter level = new LevelMeter(grid, 1);
        TruePeakMeter truePeak = new TruePeakMeter(grid, 1);
        LoudnessMeter loudness = new LoudnessMeter(take.sampleRateHz(), 1);
        Blocks.feed(samples, level::accept);
        Blocks.feed(samples, truePeak::accept);
        double worstWindow = worstWindowDifference(loudness, samples, take.sampleRateHz(), theirs);
        LoudnessReading ours = loudness.reading();
        double truePeakDbtp = truePeak.reading().truePeakDbtp();
        double rmsDbfs = level.reading().rmsDbfs();
        table.add(String.format(Locale.ROOT, "| %s | %.2f | %+.3f | %.3f | %.2f | %+.3f | %+.3f | %.2f | %+.3f | %.2f | %+.5f |", take.id(),
            ours.integratedLufs(), ours.integratedLufs() - theirs.integratedLufs(), worstWindow,
            ours.rangeLu(), ours.rangeLu() - theirs.rangeByTheDocumentLu(), ours.rangeLu() - theirs.rangeLu(),
            truePeakDbtp, truePeakDbtp - theirs.truePeakDbtp(), rmsDbfs, rmsDbfs - theirs.rmsDbfs()));
        assertThat(ours.integratedLufs()).isCloseTo(theirs.integratedLufs(), within(0.1));
        assertThat(worstWindow).isLessThan(0.01);
        assertThat(ours.rangeLu()).isCloseTo(theirs.rangeByTheDocumentLu(), within(0.1));
        assertThat(truePeakDbtp).isCloseTo(theirs.truePeakDbtp(), within(0.2));
        assertThat(level.reading().samplePeakDbfs()).isCloseTo(theirs.samplePeakDbfs(), within(1e-5));
        assertThat(rmsDbfs).isCloseTo(theirs.rmsDbfs(), within(1e-5));
        assertThat(level.reading().dcOffset()).isCloseTo(theirs.dcOffset(), within(1e-6));
    }

    /** Momentary and short-term after every 100 ms; ffmpeg leaves out the last 100 ms of some files. */
    private static double worstWindowDifference(LoudnessMeter meter, float[] samples, int sampleRateHz, FfmpegLevels theirs) {
        double[] worst = {0};
        int[] hop = {0};
        Blocks.feed(samples, sampleRateHz / 10, block -> {
            meter.accept(block);
            if (block.frames() == sampleRateHz / 10 && hop[0] < theirs.momentaryLufs().length) {
                LoudnessReading reading = meter.reading();
                worst[0] = Math.max(worst[0], difference(reading.momentaryLufs(), theirs.momentaryLufs()[hop[0]]));
                worst[0] = Math.max(worst[0], difference(reading.shortTermLufs(), theirs.shortTermLufs()[hop[0]]));
                hop[0]++;
            }
        });
        return worst[0];
    }

    private static double difference(double ours, double theirs) {
        return Math.max(ours, theirs) < -70 ? 0 : Math.abs(ours - theirs);
    }

    @AfterAll
    void leaveTheTable() throws IOException {
        Path file = Path.of("target", "accuracy", "level-against-ffmpeg.md");
        Files.createDirectories(file.getParent());
        List<String> lines = new ArrayList<>();
        lines.add("| take | I, LUFS | − ffmpeg | worst M or S | range, LU | − from ffmpeg's S | − ffmpeg | dBTP | − ffmpeg | RMS, dBFS | − ffmpeg |");
        lines.add("|---|---|---|---|---|---|---|---|---|---|---|");
        lines.addAll(table);
        Files.write(file, lines);
    }
}
