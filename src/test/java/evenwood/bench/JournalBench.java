package evenwood.bench;

import evenwood.journal.Journal;
import evenwood.journal.KeptExamples;
import evenwood.journal.Reading;
import evenwood.journal.Suspicion;
import evenwood.journal.TakeFilter;
import evenwood.journal.TakeLine;
import evenwood.journal.TakeToKeep;
import evenwood.journal.TakeWords;
import evenwood.journal.Trend;
import evenwood.takes.ReadingsSketch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.CompletableFuture;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** A journal of ten thousand takes: list (under 100 ms is wanted), search, trend (under 500 ms), all suspicions, one take whole. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(java.util.concurrent.TimeUnit.MILLISECONDS)
public class JournalBench {
    private static final int TAKES = 10_000;

    public static final Path FILE = Path.of("target", "bench", "journal-10000.db");

    private Journal journal;

    /** Kept takes are safe on the disk one by one, so filling takes a minute: it is done once and used again. */
    @Setup
    public void tenThousandTakes() throws IOException {
        if (!Files.exists(FILE)) {
            Files.createDirectories(FILE.getParent());
            Path filling = Files.createTempDirectory(FILE.getParent(), "filling").resolve("journal.db");
            try (Journal empty = Journal.open(filling)) {
                fill(empty);
            }
            Files.move(filling, FILE);
        }
        journal = Journal.open(FILE);
    }

    private static void fill(Journal empty) {
        SplittableRandom random = new SplittableRandom(1);
        List<CompletableFuture<Long>> writing = new ArrayList<>();
        for (int i = 0; i < TAKES; i++) {
            ReadingsSketch sketch = new ReadingsSketch().playing(50, -24 + random.nextGaussian()).noise(-80, -90, -90, -82 + random.nextGaussian());
            writing.add(empty.keep(new TakeToKeep(KeptExamples.EVENING.plusHours(6L * i), KeptExamples.assessment(sketch), Optional.empty(),
                new TakeWords("oud", "somewhere", "take number " + i, List.of("live")))));
        }
        writing.forEach(CompletableFuture::join);
    }

    @TearDown
    public void away() {
        journal.close();
    }

    @Benchmark
    public List<TakeLine> list() {
        return journal.list(TakeFilter.ALL);
    }

    @Benchmark
    public List<TakeLine> search() {
        return journal.list(TakeFilter.search("number 777"));
    }

    @Benchmark
    public Trend trend() {
        return journal.trend(Reading.named("hissDbfs").orElseThrow(), TakeFilter.ALL);
    }

    @Benchmark
    public List<Suspicion> suspicions() {
        return journal.suspicions(TakeFilter.ALL.ofInstrument("oud"));
    }

    @Benchmark
    public Object take() {
        return journal.take(5_000);
    }
}
