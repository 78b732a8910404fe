package evenwood.ui.screen;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.Needs;
import evenwood.ProgramLines;
import evenwood.journal.Journal;
import evenwood.journal.TakeFilter;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A take is kept in a real window, found in its journal, and from then on what is played is held against it. */
@Timeout(180)
class JournalWindowTest {
    @TempDir
    Path folder;

    @Test
    void aTakeIsKeptFoundAndPlayedAgainst() throws Exception {
        Needs.require(!System.getenv().getOrDefault("DISPLAY", "").isBlank(), "needs a display (xvfb-run)");
        Path config = Files.createDirectories(folder.resolve("config"));
        Process window = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp", System.getProperty("java.class.path"),
            WindowProbe.class.getName(), config.toString()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
        PrintStream player = new PrintStream(window.getOutputStream(), true, StandardCharsets.UTF_8);
        ProgramLines shown = new ProgramLines(window);
        shown.await("the window", 60, line -> line.startsWith("open after"));
        player.println("press demo-check");
        shown.await("something to turn", 60, line -> line.contains("said=") && !line.contains("said= ") && line.contains("moves;"));
        player.println("open play");
        player.println("press keep-take");
        player.println("open journal");
        shown.await("the newest take looked at", 60, line -> line.contains("chosen=take 1"));
        for (String part : new String[] {"sheet", "compare", "time", "practice", "export", "take"}) {
            player.println("press journal-tab-" + part);
            shown.await(part, 20, line -> line.equals("did press journal-tab-" + part + ": done"));
        }
        player.println("press recall-check");
        shown.await("held against it", 20, line -> line.contains("liked=take 1"));
        player.println("press liked-let-go");
        shown.await("no longer", 20, line -> line.startsWith("shows") && line.contains("liked=none"));
        player.println("end");
        assertThat(window.waitFor(30, TimeUnit.SECONDS)).isTrue();
        try (Journal journal = Journal.open(config.resolve("journal.db"))) {
            assertThat(journal.list(TakeFilter.ALL)).hasSize(1);
        }
    }
}
