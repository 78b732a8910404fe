package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.Main;
import evenwood.Needs;
import evenwood.ProgramLines;
import evenwood.VirtualSound;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundFiles;
import evenwood.sound.SoundSource;
import evenwood.takes.TakeFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The command plays through a real sound server, and its key switches the moves. */
@Timeout(120)
class AuditionLiveTest {
    private static final int RATE_HZ = 48_000;
    private static final double LOW_HZ = 100;
    private static final double HIGH_HZ = 2000;
    private static final double CUT_DB = 12;
    private static final long LOOK_NANOS = 5_000_000;

    @TempDir
    Path folder;

    @Test
    void enterSwitchesTheMovesOffWhileTheTakePlays() throws Exception {
        Needs.program("parec");
        Path moves = Files.writeString(folder.resolve("moves.json"), "[{\"kind\": \"low-shelf\", \"frequencyHz\": 500, \"changeDb\": -12}]");
        Path recorded = folder.resolve("heard.wav");
        try (VirtualSound sound = VirtualSound.start(folder)) {
            Process recorder = sound.record(recorded, "guitar");
            Process audition = sound.java(Main.class, "audition", twoTones().toString(), "--moves", moves.toString());
            ProgramLines said = new ProgramLines(audition);
            said.await("the start", 30, line -> line.startsWith("Playing"));
            awaitLength(recorded, 3);
            audition.getOutputStream().write("\n".getBytes(StandardCharsets.UTF_8));
            audition.getOutputStream().flush();
            said.await("the switch", 10, "without the moves"::equals);
            assertThat(audition.waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(audition.exitValue()).isZero();
            recorder.destroy();
            recorder.waitFor();
        }
        float[] heard = sounding(recorded);
        double first = lowAgainstHighDb(heard, RATE_HZ / 2);
        double last = lowAgainstHighDb(heard, heard.length - RATE_HZ);
        assertThat(last - first).isCloseTo(CUT_DB, within(0.5));
    }

    /** The server decides how fast sound passes; what was recorded tells how far it is. */
    private static void awaitLength(Path file, double seconds) throws Exception {
        long deadline = System.nanoTime() + 30_000_000_000L;
        while (!Files.exists(file) || Files.size(file) < seconds * RATE_HZ * 3) {
            assertThat(System.nanoTime()).as("recording goes on").isLessThan(deadline);
            java.util.concurrent.locks.LockSupport.parkNanos(LOOK_NANOS);
        }
    }

    private Path twoTones() {
        float[] tones = new float[10 * RATE_HZ];
        for (int i = 0; i < tones.length; i++) {
            tones[i] = (float) (0.1 * Math.sin(2 * Math.PI * LOW_HZ * i / RATE_HZ) + 0.1 * Math.sin(2 * Math.PI * HIGH_HZ * i / RATE_HZ));
        }
        return TakeFile.writePcm(folder.resolve("tones.wav"), tones, RATE_HZ, 24);
    }

    private static float[] sounding(Path file) {
        try (SoundSource source = SoundFiles.open(file, 0)) {
            float[] all = new float[60 * RATE_HZ];
            int length = 0;
            AudioBlock block = new AudioBlock(4096);
            while (source.read(block) >= 0) {
                System.arraycopy(block.samples(), 0, all, length, block.frames());
                length += block.frames();
            }
            int start = 0;
            while (start < length && Math.abs(all[start]) < 1e-3) {
                start++;
            }
            int end = length;
            while (end > start && Math.abs(all[end - 1]) < 1e-3) {
                end--;
            }
            return java.util.Arrays.copyOfRange(all, start, end);
        }
    }

    private static double lowAgainstHighDb(float[] sound, int from) {
        return powerDb(sound, from, LOW_HZ) - powerDb(sound, from, HIGH_HZ);
    }

    private static double powerDb(float[] sound, int from, double hz) {
        double re = 0;
        double im = 0;
        for (int i = 0; i < RATE_HZ / 2; i++) {
            re += sound[from + i] * Math.cos(2 * Math.PI * hz * i / RATE_HZ);
            im += sound[from + i] * Math.sin(2 * Math.PI * hz * i / RATE_HZ);
        }
        return 10 * Math.log10(re * re + im * im);
    }
}
