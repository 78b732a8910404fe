package evenwood.ui.screen;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.Needs;
import evenwood.ProgramLines;
import evenwood.VirtualSound;
import evenwood.journal.Journal;
import evenwood.takes.CheckScore;
import evenwood.takes.TakeFile;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A player switches the practice log on in a real window and plays through a sound server; the window closes in the midst of it. */
@Timeout(240)
class PracticeWindowLiveTest {
    private static final double SECONDS = 30;
    @TempDir
    Path folder;

    @Test
    void whatIsPlayedIsWrittenDownOnceItIsWanted() throws Exception {
        Needs.require(!System.getenv().getOrDefault("DISPLAY", "").isBlank(), "needs a display (xvfb-run)");
        Path config = Files.createDirectories(folder.resolve("config"));
        try (VirtualSound sound = VirtualSound.start(folder)) {
            Path playing = TakeFile.writePcm(folder.resolve("playing.wav"), CheckScore.joined(CheckScore.rest(3), CheckScore.usual(90)), CheckScore.RATE_HZ, 24);
            Process window = sound.java(WindowProbe.class, config.toString());
            PrintStream player = new PrintStream(window.getOutputStream(), true, StandardCharsets.UTF_8);
            ProgramLines shown = new ProgramLines(window);
            shown.await("the input in the list", 60, line -> line.contains("input=there"));
            player.println("press listen-1");
            shown.await("sound", 30, line -> line.contains("heard=yes"));
            player.println("open journal");
            player.println("press practice-want");
            shown.await("it is wanted", 20, line -> line.equals("did press practice-want: done"));
            sound.play(playing, "guitar");
            shown.await("so much playing", 120, line -> line.startsWith("shows") && heardSeconds(line) > SECONDS);
            player.println("close");
            assertThat(window.waitFor(30, TimeUnit.SECONDS)).isTrue();
        }
        try (Journal journal = Journal.open(config.resolve("journal.db"))) {
            assertThat(journal.practice()).singleElement().satisfies(sitting -> {
                assertThat(sitting.instrument()).isEqualTo("steel-string-guitar");
                assertThat(sitting.figures().playingSeconds()).isGreaterThan(SECONDS / 2);
                assertThat(sitting.figures().usualDbfs()).isNegative().isGreaterThan(-60);
            });
        }
    }

    private static double heardSeconds(String line) {
        return Double.parseDouble(line.replaceAll(".*listened=(\\d+) s.*", "$1"));
    }
}
