package evenwood.ui.screen;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.Needs;
import evenwood.ProgramLines;
import evenwood.VirtualSound;
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

/** A player hunts a hum in the window, through a sound server: it goes when another cable is taken. */
@Timeout(240)
class HuntWindowLiveTest {
    private static final int RATE_HZ = 48_000;
    private static final int SECONDS = 90;
    @TempDir
    Path folder;

    @Test
    void theCableThatCuresIsFoundAndTheBarsMoveWhileItIsHeard() throws Exception {
        Needs.require(!System.getenv().getOrDefault("DISPLAY", "").isBlank(), "needs a display (xvfb-run)");
        try (VirtualSound sound = VirtualSound.start(folder)) {
            float[] room = Faults.hiss(new float[SECONDS * RATE_HZ], RATE_HZ, -85, 0.2, 1).samples();
            Path humming = TakeFile.writePcm(folder.resolve("hum.wav"), Faults.mains(room, RATE_HZ, Mains.Origin.GROUND_LOOP, 50, 0.005, -45, 1).samples(), RATE_HZ, 16);
            Path cured = TakeFile.writePcm(folder.resolve("cured.wav"), room, RATE_HZ, 16);
            Process hum = sound.play(humming, "guitar");
            Process window = sound.java(WindowProbe.class, Files.createDirectories(folder.resolve("config")).toString());
            PrintStream player = new PrintStream(window.getOutputStream(), true, StandardCharsets.UTF_8);
            ProgramLines shown = new ProgramLines(window);
            shown.await("the window", 60, line -> line.startsWith("open after"));
            player.println("open hunt");
            player.println("press hunt-begin");
            shown.await("the bars on their way", 60, line -> line.contains("hunt=listening, 50 % heard"));
            shown.await("the noise as it is", 60, line -> line.contains("hunt=OPEN"));
            hum.destroy();
            assertThat(hum.waitFor(10, TimeUnit.SECONDS)).isTrue();
            sound.play(cured, "guitar");
            player.println("pick hunt-others another cable");
            player.println("press hunt-done");
            shown.await("the bars on their way again", 60, line -> line.contains("hunt=listening, 50 % heard"));
            assertThat(shown.await("the cure", 60, line -> line.contains("other-cable GONE")).text()).contains("suspected cable-screen");
            player.println("end");
            assertThat(window.waitFor(30, TimeUnit.SECONDS)).isTrue();
        }
    }
}
