package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.Main;
import evenwood.Needs;
import evenwood.ProgramLines;
import evenwood.VirtualSound;
import evenwood.takes.Faults;
import evenwood.takes.Mains;
import evenwood.takes.TakeFile;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A player hunts through a sound server: the hum goes when another cable is taken. */
@Timeout(240)
class HuntLiveTest {
    private static final int RATE_HZ = 48_000;
    private static final int SECONDS = 60;

    @TempDir
    Path folder;

    @Test
    void theCableThatCuresIsFoundByListening() throws Exception {
        try (VirtualSound sound = VirtualSound.start(folder)) {
            float[] room = Faults.hiss(new float[SECONDS * RATE_HZ], RATE_HZ, -85, 0.2, 1).samples();
            Path humming = TakeFile.writePcm(folder.resolve("hum.wav"),
                Faults.mains(room, RATE_HZ, Mains.Origin.GROUND_LOOP, 50, 0.005, -45, 1).samples(), RATE_HZ, 16);
            Path cured = TakeFile.writePcm(folder.resolve("cured.wav"), room, RATE_HZ, 16);
            Process hum = sound.play(humming, "guitar");
            Process hunt = sound.java(Main.class, "hunt", "--seconds", "3");
            ProgramLines said = new ProgramLines(hunt);
            type(hunt, "\n");
            said.await("the noise as it is", 60, line -> line.contains("hunted"));
            hum.destroy();
            assertThat(hum.waitFor(10, TimeUnit.SECONDS)).isTrue();
            sound.play(cured, "guitar");
            type(hunt, "lift the mains earth\nother-cable\n");
            said.await("the cure", 60, line -> line.startsWith("  all but gone"));
            assertThat(said.await("the cause", 20, line -> line.contains(" %  ")).text()).contains("cable whose screen is broken");
            endUnlessDecided(hunt);
            said.await("the end", 20, line -> line.contains("likely") || line.startsWith("The cause") || line.startsWith("Not decided"));
            assertThat(hunt.waitFor(20, TimeUnit.SECONDS)).isTrue();
            assertThat(hunt.exitValue()).isZero();
        }
    }

    @Test
    void ctrlCAtTheQuestionTellsWhatIsKnown() throws Exception {
        Needs.program("kill");
        try (VirtualSound sound = VirtualSound.start(folder)) {
            float[] room = Faults.hiss(new float[SECONDS * RATE_HZ], RATE_HZ, -85, 0.2, 1).samples();
            sound.play(TakeFile.writePcm(folder.resolve("hum.wav"), Faults.mains(room, RATE_HZ, Mains.Origin.GROUND_LOOP, 50, 0.005, -45, 1).samples(), RATE_HZ, 16), "guitar");
            Process hunt = sound.java(Main.class, "hunt", "--seconds", "2");
            ProgramLines said = new ProgramLines(hunt);
            type(hunt, "\n");
            said.await("the noise as it is", 60, line -> line.contains("hunted"));
            type(hunt, "\n");
            said.await("what one trial told", 60, line -> line.equals("Likeliest so far"));
            assertThat(new ProcessBuilder("kill", "-INT", "" + hunt.pid()).start().waitFor()).isZero();
            said.await("the whole again", 20, line -> line.startsWith("The noise while nobody plays"));
            said.await("what is known", 20, line -> line.startsWith("Not decided"));
            assertThat(hunt.waitFor(20, TimeUnit.SECONDS)).isTrue();
            assertThat(hunt.exitValue()).as("ended as a command, not as a killed program").isZero();
        }
    }

    /** How clear one trial is depends on what was heard; a hunt that is decided ends without being asked. */
    private static void endUnlessDecided(Process hunt) throws IOException, InterruptedException {
        try {
            type(hunt, "q\n");
        } catch (IOException nobodyAsksAnyMore) {
            assertThat(hunt.waitFor(20, TimeUnit.SECONDS)).as("it went because it was done").isTrue();
        }
    }

    private static void type(Process process, String text) throws IOException {
        OutputStream in = process.getOutputStream();
        in.write(text.getBytes(StandardCharsets.UTF_8));
        in.flush();
    }
}
