package evenwood.bench;

import evenwood.sound.AudioBlock;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Runs the benchmarks of this package and prints what each costs: {@code mvn -q -Pbench verify}, or
 * {@code mvn -q -Pbench verify -Dbench=Loudness} for those whose name contains a word.
 *
 * <p>Rule for a benchmark: a method whose name starts with {@code accept} hears one block of 512 frames at 48 kHz and is
 * told per sample and as a share of the block's 10.7 ms; any other method is told per call. All figures are processor time.
 */
public final class BenchRun {
    private static final int SAMPLE_RATE_HZ = 48_000;
    private static final double BLOCK_NANOSECONDS = 1e9 * AudioBlock.DEFAULT_FRAMES / SAMPLE_RATE_HZ;

    private BenchRun() { }

    public static void main(String[] args) throws RunnerException {
        String wanted = args.length == 0 ? "" : args[0];
        Collection<RunResult> results = new Runner(new OptionsBuilder()
            .include("evenwood\\.bench\\..*" + wanted)
            .mode(Mode.AverageTime).timeUnit(TimeUnit.NANOSECONDS)
            .warmupIterations(3).warmupTime(TimeValue.milliseconds(500))
            .measurementIterations(5).measurementTime(TimeValue.milliseconds(500))
            .forks(1).addProfiler(ProcessorTime.class).verbosity(VerboseMode.SILENT).build()).run();
        List<RunResult> sorted = results.stream().sorted(Comparator.comparing(BenchRun::name)).toList();
        System.out.printf("| benchmark | ns/sample | share of a 512-frame block at 48 kHz | times real time | µs/call | ± %% |%n|---|---|---|---|---|---|%n");
        sorted.forEach(BenchRun::print);
    }

    private static void print(RunResult result) {
        Result<?> processor = result.getSecondaryResults().get(ProcessorTime.LABEL);
        double nanoseconds = processor.getScore();
        double error = 100 * processor.getScoreError() / nanoseconds;
        String perSample = perBlock(result)
            ? String.format(Locale.ROOT, "%.2f | %.3f %% | %.0f", nanoseconds / AudioBlock.DEFAULT_FRAMES,
                100 * nanoseconds / BLOCK_NANOSECONDS, BLOCK_NANOSECONDS / nanoseconds)
            : "– | – | –";
        System.out.printf(Locale.ROOT, "| %s | %s | %.2f | %.0f |%n", name(result), perSample, nanoseconds / 1000, error);
    }

    private static boolean perBlock(RunResult result) {
        return result.getPrimaryResult().getLabel().startsWith("accept");
    }

    private static String name(RunResult result) {
        String benchmark = result.getParams().getBenchmark();
        StringBuilder name = new StringBuilder(benchmark.substring("evenwood.bench.".length()));
        result.getParams().getParamsKeys().forEach(key -> name.append(' ').append(key).append('=').append(result.getParams().getParam(key)));
        return name.toString();
    }
}
