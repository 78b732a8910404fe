package evenwood.ui.screen;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.Needs;
import evenwood.ProgramLines;
import evenwood.VirtualSound;
import evenwood.takes.CheckScore;
import evenwood.takes.Faults;
import evenwood.takes.Mains;
import evenwood.takes.TakeFile;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A real window under a virtual display hears a player through a sound server: first check, moves, second check; a pulled plug. */
@Timeout(400)
class WindowLiveTest {
    private static final double HUM_DBFS = -45;
    private static final double MAINS_HZ = 50;
    @TempDir
    Path folder;

    @Test
    void aPlayerIsLedToTheMovesAndTheSecondCheckIsBetter() throws Exception {
        display();
        try (VirtualSound sound = VirtualSound.start(folder)) {
            float[] clean = CheckScore.joined(CheckScore.rest(7), CheckScore.soft(14), CheckScore.hard(14), CheckScore.usual(70));
            float[] humming = Faults.mains(clean, CheckScore.RATE_HZ, Mains.Origin.MAGNETIC, MAINS_HZ, 0, HUM_DBFS, 3).samples();
            Path first = TakeFile.writePcm(folder.resolve("first.wav"), humming, CheckScore.RATE_HZ, 24);
            Path second = TakeFile.writePcm(folder.resolve("second.wav"), clean, CheckScore.RATE_HZ, 24);
            Process window = sound.java(WindowProbe.class, scratch());
            PrintStream player = new PrintStream(window.getOutputStream(), true, StandardCharsets.UTF_8);
            ProgramLines shown = new ProgramLines(window);
            shown.await("the window", 60, line -> line.startsWith("open after"));
            shown.await("the input in the list", 30, line -> line.contains("input=there"));
            player.println("press listen-1");
            shown.await("sound", 30, line -> line.contains("heard=yes"));
            player.println("open guide");
            player.println("press guide-begin");
            shown.await("the first step", 30, line -> line.contains("guide=quiet"));
            Process playing = sound.play(first, "guitar");
            for (String step : new String[] {"soft", "hard", "play"}) {
                shown.await(step, 120, line -> line.contains("guide=" + step));
            }
            shown.await("the end, and the hum found", 120, line -> line.contains("guide=over") && line.contains("Hum"));
            playing.destroy();
            player.println("press guide-begin");
            shown.await("the first step again", 30, line -> line.contains("guide=quiet"));
            sound.play(second, "guitar");
            shown.await("the end of the second check, and the hum better", 240, line -> line.contains("guide=over") && line.contains("hum=better"));
            player.println("end");
            assertThat(window.waitFor(30, TimeUnit.SECONDS)).isTrue();
        }
    }

    @Test
    void aPulledPlugIsSaidCalmlyAndGoesOnByItself() throws Exception {
        display();
        try (VirtualSound sound = VirtualSound.start(folder)) {
            Process window = sound.java(WindowProbe.class, scratch());
            PrintStream player = new PrintStream(window.getOutputStream(), true, StandardCharsets.UTF_8);
            ProgramLines shown = new ProgramLines(window);
            shown.await("the input in the list", 60, line -> line.contains("input=there"));
            player.println("press listen-1");
            shown.await("sound", 30, line -> line.contains("heard=yes"));
            sound.kill();
            shown.await("the plug is out", 30, line -> line.contains("is away. Plug it in again"));
            sound.startAgain();
            shown.await("it is back", 60, line -> line.startsWith("shows") && !line.contains("is away"));
            player.println("end");
            assertThat(window.waitFor(30, TimeUnit.SECONDS)).isTrue();
        }
    }

    @Test
    void everyPageIsLaidOutFromSmallToHuge() throws Exception {
        display();
        Process window = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
            System.getProperty("java.class.path"), WindowProbe.class.getName(), scratch()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
        PrintStream player = new PrintStream(window.getOutputStream(), true, StandardCharsets.UTF_8);
        ProgramLines shown = new ProgramLines(window);
        shown.await("the window", 60, line -> line.startsWith("open after"));
        player.println("press demo-check");
        shown.await("moves", 60, line -> line.contains("things to turn") || line.contains("One thing to turn"));
        for (String page : new String[] {"source", "play", "guide", "rig"}) {
            player.println("open " + page);
            for (String size : new String[] {"800 600", "1280 800", "3840 2160"}) {
                player.println("size " + size);
                player.println("measure");
                shown.await(page + " at " + size, 30, line -> line.startsWith("did measure: ") && line.contains(" x "));
            }
        }
        player.println("end");
        assertThat(window.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(window.exitValue()).isZero();
    }

    private String scratch() throws java.io.IOException {
        return Files.createDirectories(folder.resolve("config")).toString();
    }

    private static void display() {
        Needs.require(!System.getenv().getOrDefault("DISPLAY", "").isBlank(), "needs a display (xvfb-run)");
    }
}
