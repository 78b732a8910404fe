package evenwood.ui.screen;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.Needs;
import evenwood.ProgramLines;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A chain in a real window: boxes put in, moved with the mouse and with the keys, taken out; questions asked. */
@Timeout(180)
class WiringWindowTest {
    @TempDir
    Path folder;

    @Test
    void boxesAreReorderedByDraggingAndByTheKeys() throws Exception {
        Needs.require(!System.getenv().getOrDefault("DISPLAY", "").isBlank(), "needs a display (xvfb-run)");
        Process window = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp", System.getProperty("java.class.path"),
            WindowProbe.class.getName(), Files.createDirectories(folder.resolve("config")).toString()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
        PrintStream player = new PrintStream(window.getOutputStream(), true, StandardCharsets.UTF_8);
        ProgramLines shown = new ProgramLines(window);
        shown.await("the window", 60, line -> line.startsWith("open after"));
        player.println("open wiring");
        player.println("pick wiring-scenarios Studio");
        shown.await("one box", 20, line -> line.contains("chain=[piezo-buffer]"));
        player.println("pick wiring-add passive DI");
        shown.await("a second one before the input", 20, line -> line.contains("chain=[piezo-buffer, passive-di]"));
        player.println("measure");
        // Four things side by side: the boxes stand about a third and two thirds along.
        player.println("drag chain 0.36 0.72");
        shown.await("the first one dragged behind the second", 20, line -> line.contains("chain=[passive-di, piezo-buffer]"));
        player.println("key chain LEFT shift");
        shown.await("and back with the keys", 20, line -> line.contains("chain=[piezo-buffer, passive-di]"));
        player.println("press wiring-out");
        shown.await("the chosen one taken out", 20, line -> line.contains("chain=[passive-di]"));
        player.println("press wiring-ask");
        player.println("size 660 700");
        player.println("measure");
        player.println("press answer-piezo-bridge");
        shown.await("the questions still there in a narrow window", 20, line -> line.equals("did press answer-piezo-bridge: done"));
        player.println("end");
        assertThat(window.waitFor(30, TimeUnit.SECONDS)).isTrue();
    }
}
