package evenwood.journal;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.takes.ReadingsSketch;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A program that is keeping takes is killed again and again: every take it said was kept is there, whole. A hundred times
 * where nothing may be skipped ({@code -Devenwood.require=all}), fewer while working: each costs a start of Java.
 */
class JournalKillTest {
    private static final int KILLS = "all".equals(System.getProperty("evenwood.require")) ? 100 : 25;

    @TempDir
    Path folder;

    @Test
    void aKilledProgramLosesAtMostTheTakeItWasWriting() throws IOException, InterruptedException {
        Path file = folder.resolve("journal.db");
        SplittableRandom random = new SplittableRandom(6);
        long said = 0;
        int grew = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            Process writer = writer(file);
            long sayings = saidUntilKilled(writer, random.nextInt(4), random.nextInt(30_000));
            said = Math.max(said, sayings);
            grew += sayings > 0 ? 1 : 0;
        }
        try (Journal journal = Journal.open(file)) {
            List<TakeLine> lines = journal.list(TakeFilter.ALL);
            assertThat(lines).hasSizeGreaterThanOrEqualTo((int) said).hasSizeLessThanOrEqualTo((int) said + KILLS);
            assertThat(journal.points("truePeakDbtp", TakeFilter.ALL)).as("readings beside every line").hasSameSizeAs(lines);
            for (TakeLine line : lines.subList(0, Math.min(200, lines.size()))) {
                assertThat(journal.take(line.id()).assessment().readings().truePeak().truePeakDbtp()).isEqualTo(-9);
            }
            String whole = journal.store().read(connection -> TakeTable.rows(connection, "PRAGMA integrity_check", row -> row.getString(1))).get(0);
            assertThat(whole).isEqualTo("ok");
        }
        assertThat(grew).as("children that got so far as to write before they were killed").isGreaterThan(KILLS / 2);
    }

    /** Lets the child say a few numbers, a moment more, and kills it. @return the last number it said */
    private static long saidUntilKilled(Process writer, int more, int nanosMore) throws IOException, InterruptedException {
        long last = 0;
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(writer.getInputStream()))) {
            for (int i = 0; i <= more; i++) {
                String line = lines.readLine();
                last = line == null ? last : Long.parseLong(line);
            }
            for (long until = System.nanoTime() + nanosMore; System.nanoTime() < until;) {
                Thread.onSpinWait();
            }
            writer.toHandle().destroyForcibly(); // unlike the process's own, it leaves what was said to be read
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                last = line.matches("\\d+") ? Math.max(last, Long.parseLong(line)) : last;
            }
        }
        assertThat(writer.waitFor(20, TimeUnit.SECONDS)).isTrue();
        return last;
    }

    private static Process writer(Path file) throws IOException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xshare:auto", "-cp", System.getProperty("java.class.path"), Writer.class.getName(), file.toString()));
        return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    }

    /** The child: keeps takes for as long as it lives and says the number of each once it is kept. */
    static final class Writer {
        private Writer() { }

        public static void main(String[] args) {
            var assessment = KeptExamples.assessment(new ReadingsSketch());
            try (Journal journal = Journal.open(Path.of(args[0]))) {
                while (true) {
                    System.out.println(journal.keepNow(new TakeToKeep(KeptExamples.EVENING, assessment, java.util.Optional.empty(), TakeWords.NONE)));
                }
            }
        }
    }
}
