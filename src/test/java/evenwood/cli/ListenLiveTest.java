package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenwood.Main;
import evenwood.ProgramLines;
import evenwood.VirtualSound;
import evenwood.takes.PackagedTakes;
import evenwood.takes.PlayedInstrument;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The whole program listens to a known take through a sound server, and says what it says of the file. */
@Timeout(240)
class ListenLiveTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    /** From the first line of {@code listen} until the player's last sample was heard, beside the take itself. */
    private static final int SECONDS_TO_SPARE = 6;

    @TempDir
    Path folder;

    @Test
    void whatIsHeardLiveReadsAsTheFileDoes() throws Exception {
        try (VirtualSound sound = VirtualSound.start(folder)) {
            Path take = PackagedTakes.take(PackagedTakes.of(PlayedInstrument.STEEL_STRING_GUITAR));
            JsonNode file = JSON.readTree(Spoken.by("check", take.toString(), "--json").out());
            int seconds = (int) Math.ceil(file.at("/take/durationSeconds").asDouble()) + SECONDS_TO_SPARE;
            Process listen = sound.java(Main.class, "listen", "--json", "--seconds", Integer.toString(seconds),
                "--log", "--journal", folder.resolve("journal.db").toString());
            ProgramLines said = new ProgramLines(listen);
            said.await("sound", 30, line -> line.contains("\"state\":\"running\""));
            Process player = sound.play(take, "guitar");
            JsonNode live = JSON.readTree(said.await("the result", seconds + 60, line -> line.contains("evenwood.check/1")).text());
            assertThat(player.waitFor(1, TimeUnit.SECONDS)).as("all was played before the end").isTrue();
            assertThat(listen.waitFor(20, TimeUnit.SECONDS)).isTrue();
            assertThat(listen.exitValue()).isIn(0, 1);
            assertThat(said.texts()).as("nothing is lost").allMatch(line -> !line.contains("lostFrames") || line.contains("\"lostFrames\":0"));
            for (String level : new String[] {"samplePeakDbfs", "truePeakDbtp", "integratedLufs", "softDbfs", "usualDbfs", "hardDbfs"}) {
                assertThat(live.at("/level/" + level).asDouble()).as(level).isCloseTo(file.at("/level/" + level).asDouble(), within(0.2));
            }
            JsonNode sitting = JSON.readTree(Spoken.by("journal", "practice", "--json", "--journal", folder.resolve("journal.db").toString()).out()).at("/practice/0");
            assertThat(sitting.get("playingSeconds").asDouble()).as("what --log wrote down").isCloseTo(live.at("/take/playingSeconds").asDouble(), within(0.1));
            // The silence before and after the take is heard too, and windows that are half in it widen the range.
            assertThat(live.at("/level/loudnessRangeLu").asDouble()).isCloseTo(file.at("/level/loudnessRangeLu").asDouble(), within(1.0));
        }
    }

    @Test
    void aServerThatIsKilledInTheMiddleIsToldResumedAndCostsNothingThatWasHeard() throws Exception {
        try (VirtualSound sound = VirtualSound.start(folder)) {
            Path take = PackagedTakes.take(PackagedTakes.of(PlayedInstrument.UKULELE));
            JsonNode file = JSON.readTree(Spoken.by("check", take.toString(), "--json").out());
            Process listen = sound.java(Main.class, "listen", "--json");
            ProgramLines said = new ProgramLines(listen);
            said.await("sound", 30, line -> line.contains("\"state\":\"running\""));
            assertThat(sound.play(take, "guitar").waitFor(120, TimeUnit.SECONDS)).isTrue();
            Process cutOff = sound.play(take, "guitar");
            said.await("the second playing", 30, line -> peak(line) > -40);
            long killed = System.nanoTime();
            sound.kill();
            ProgramLines.Line told = said.await("the loss", 20, line -> line.contains("\"state\":\"waiting-for-device\""));
            assertThat((told.nanos() - killed) / 1e9).as("seconds until the loss was told").isLessThan(1);
            assertThat(told.text()).doesNotContain("\"message\":null");
            cutOff.waitFor(20, TimeUnit.SECONDS);
            sound.startAgain();
            said.await("the return", 20, line -> line.contains("\"state\":\"running\""));
            said.await("sound measured again", 20, line -> line.contains("\"state\":\"running\"") && !line.contains("\"lostFrames\":0"));
            // As Ctrl-C does; Process.destroy would also close what the program still has to say.
            listen.toHandle().destroy();
            JsonNode live = JSON.readTree(said.await("the result", 30, line -> line.contains("evenwood.check/1")).text());
            assertThat(listen.waitFor(20, TimeUnit.SECONDS)).isTrue();
            assertThat(listen.exitValue()).as("ended as a command, not as a killed program").isIn(0, 1);
            assertThat(live.at("/take/durationSeconds").asDouble()).as("all before the loss, and what came after it, is in the take")
                .isGreaterThan(file.at("/take/durationSeconds").asDouble());
            for (String level : new String[] {"samplePeakDbfs", "truePeakDbtp"}) {
                assertThat(live.at("/level/" + level).asDouble()).as(level).isCloseTo(file.at("/level/" + level).asDouble(), within(0.2));
            }
            assertThat(live.at("/noise/clicks").asInt()).as("the cut is no crackle").isEqualTo(file.at("/noise/clicks").asInt());
        }
    }

    private static double peak(String line) {
        try {
            return JSON.readTree(line).path("peakDbtp").asDouble(Double.NEGATIVE_INFINITY);
        } catch (IOException notJson) {
            throw new AssertionError("not a JSON line: " + line, notJson);
        }
    }
}
