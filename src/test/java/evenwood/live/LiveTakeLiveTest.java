package evenwood.live;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.ProgramLines;
import evenwood.VirtualSound;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.FloatBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A whole live take through a real sound server, a real line and a program of its own. */
@Timeout(120)
class LiveTakeLiveTest {
    private static final int RATE_HZ = 48_000;

    @TempDir
    Path folder;

    @Test
    void whatIsPlayedArrivesBitExact() throws Exception {
        float[] take = takeOf(4, 1);
        try (VirtualSound sound = VirtualSound.start(folder)) {
            Path heardFile = folder.resolve("heard.f32");
            Process probe = sound.java(LiveTakeProbe.class, heardFile.toString(), "2");
            ProgramLines said = new ProgramLines(probe);
            assertThat(said.await("the format", 20, line -> line.startsWith("FORMAT")).text())
                .isEqualTo("FORMAT SoundFormat[sampleRateHz=48000, channels=2, channel=2, bitDepth=24]");
            said.await("sound", 20, "STATE RUNNING "::equals);
            playToEnd(sound, "guitar", write(take, take));
            String end = stop(probe, said);
            assertThat(end).contains(" lost=0 ").contains(" gaps=0 ");
            // Blocks passed by the hundred; what is left is what the thread needs to begin.
            assertThat(Long.parseLong(end.replaceAll(".*captureAllocated=", ""))).as("bytes allocated by capture").isBetween(0L, 65_536L);
            float[] heard = read(heardFile);
            int at = find(take, heard);
            assertThat(Arrays.copyOfRange(heard, at, at + take.length)).containsExactly(take);
        }
    }

    @Test
    void aServerThatIsKilledIsToldWithinASecondAndHeardAgainWhenItReturns() throws Exception {
        float[] before = takeOf(2, 2);
        float[] after = takeOf(2, 3);
        try (VirtualSound sound = VirtualSound.start(folder)) {
            Path heardFile = folder.resolve("heard.f32");
            Process probe = sound.java(LiveTakeProbe.class, heardFile.toString(), "1");
            ProgramLines said = new ProgramLines(probe);
            said.await("sound", 20, "STATE RUNNING "::equals);
            playToEnd(sound, "guitar", write(before, before));
            long killed = System.nanoTime();
            sound.kill();
            ProgramLines.Line told = said.await("the loss", 20, line -> line.startsWith("STATE WAITING_FOR_DEVICE"));
            assertThat((told.nanos() - killed) / 1e9).as("seconds until the loss was told").isLessThan(1);
            sound.startAgain();
            ProgramLines.Line back = said.await("the return", 20, "STATE RUNNING "::equals);
            playToEnd(sound, "guitar", write(after, after));
            String end = stop(probe, said);
            double awaySeconds = (back.nanos() - killed) / 1e9;
            double lostSeconds = Double.parseDouble(end.replaceAll(".* lost=(\\d+) .*", "$1")) / RATE_HZ;
            assertThat(end).contains(" gaps=1 ");
            assertThat(lostSeconds).as("seconds told as lost, of %.2f away", awaySeconds).isBetween(awaySeconds - 0.5, awaySeconds + 0.5);
            float[] heard = read(heardFile);
            assertThat(find(before, heard)).as("before the loss").isLessThan(find(after, heard));
        }
    }

    @Test
    void theThirdOfFourChannelsIsHeardAndTheOthersAreNot() throws Exception {
        float[][] channels = {takeOf(2, 4), takeOf(2, 5), takeOf(2, 6), takeOf(2, 7)};
        try (VirtualSound sound = VirtualSound.start(folder).hearing("desk")) {
            Path heardFile = folder.resolve("heard.f32");
            Process probe = sound.java(LiveTakeProbe.class, heardFile.toString(), "3");
            ProgramLines said = new ProgramLines(probe);
            assertThat(said.await("the format", 20, line -> line.startsWith("FORMAT")).text())
                .isEqualTo("FORMAT SoundFormat[sampleRateHz=48000, channels=4, channel=3, bitDepth=24]");
            said.await("sound", 20, "STATE RUNNING "::equals);
            playToEnd(sound, "desk", write(channels));
            stop(probe, said);
            assertThat(find(channels[2], read(heardFile))).isGreaterThanOrEqualTo(0);
        }
    }

    @Test
    void aTakeOnTheWrongChannelIsToldWhereTheSoundIsWithinTwoSeconds() throws Exception {
        try (VirtualSound sound = VirtualSound.start(folder)) {
            Process probe = sound.java(LiveTakeProbe.class, folder.resolve("heard.f32").toString(), "1");
            ProgramLines said = new ProgramLines(probe);
            ProgramLines.Line running = said.await("sound", 20, "STATE RUNNING "::equals);
            Process player = sound.play(write(new float[4 * RATE_HZ], takeOf(4, 8)), "guitar");
            ProgramLines.Line told = said.await("the advice", 20, line -> line.startsWith("STATE RUNNING channel 1 delivers"));
            assertThat((told.nanos() - running.nanos()) / 1e9).as("seconds until it was told").isLessThan(2);
            String named = "STATE RUNNING channel 1 delivers nothing but exact zeros, but channel 2 carries sound; choose that channel";
            if (!told.text().equals(named)) {
                said.await("the channel", 20, named::equals);
            }
            assertThat(player.waitFor(60, TimeUnit.SECONDS)).isTrue();
            stop(probe, said);
        }
    }

    private Path write(float[]... channels) throws IOException {
        byte[] bytes = new byte[channels[0].length * channels.length * 3];
        int at = 0;
        for (int frame = 0; frame < channels[0].length; frame++) {
            for (float[] channel : channels) {
                int value = Math.round(channel[frame] * 8_388_608f);
                bytes[at++] = (byte) value;
                bytes[at++] = (byte) (value >> 8);
                bytes[at++] = (byte) (value >> 16);
            }
        }
        Path file = Files.createTempFile(folder, "played", ".wav");
        AudioFormat format = new AudioFormat(RATE_HZ, 24, channels.length, true, false);
        AudioSystem.write(new AudioInputStream(new ByteArrayInputStream(bytes), format, channels[0].length),
            AudioFileFormat.Type.WAVE, file.toFile());
        return file;
    }

    private static void playToEnd(VirtualSound sound, String sink, Path file) throws InterruptedException {
        Process player = sound.play(file, sink);
        assertThat(player.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(player.exitValue()).isZero();
    }

    private static String stop(Process probe, ProgramLines said) throws Exception {
        probe.getOutputStream().write("stop\n".getBytes(StandardCharsets.US_ASCII));
        probe.getOutputStream().flush();
        String end = said.await("the end", 20, line -> line.startsWith("END")).text();
        assertThat(probe.waitFor(20, TimeUnit.SECONDS)).as("the program ends").isTrue();
        return end;
    }

    /** Noise on 24-bit steps; 0.2 s of silence first, because a player that starts may lose some milliseconds. */
    private static float[] takeOf(int seconds, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        float[] take = new float[seconds * RATE_HZ];
        for (int i = RATE_HZ / 5; i < take.length; i++) {
            take[i] = random.nextInt(-4_000_000, 4_000_000) / 8_388_608f;
        }
        return take;
    }

    private static float[] read(Path file) throws IOException {
        FloatBuffer floats = ByteBuffer.wrap(Files.readAllBytes(file)).asFloatBuffer();
        float[] heard = new float[floats.remaining()];
        floats.get(heard);
        return heard;
    }

    /** Where in what was heard the take stands, by its first loud second; every sample of it is compared. */
    private static int find(float[] take, float[] heard) {
        int start = RATE_HZ / 5;
        for (int at = start; at + take.length - start <= heard.length; at++) {
            if (heard[at] == take[start] && Arrays.equals(heard, at, at + take.length - start, take, start, take.length)) {
                return at - start;
            }
        }
        throw new AssertionError("the take of " + take.length + " frames is not in the " + heard.length + " heard");
    }
}
