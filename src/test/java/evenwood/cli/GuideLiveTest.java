package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenwood.Main;
import evenwood.ProgramLines;
import evenwood.VirtualSound;
import evenwood.coach.GuidedCheck;
import evenwood.takes.CheckScore;
import evenwood.takes.TakeFile;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The whole program leads a player, heard through a sound server, from rest to the verdict. */
@Timeout(240)
class GuideLiveTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    Path folder;

    @Test
    void aPlayerWhoDoesAsAskedGetsAVerdictWithoutTouchingAKey() throws Exception {
        try (VirtualSound sound = VirtualSound.start(folder)) {
            Path playing = TakeFile.writePcm(folder.resolve("player.wav"), CheckScore.joined(CheckScore.rest(7),
                CheckScore.soft(14), CheckScore.hard(14), CheckScore.usual(60)), CheckScore.RATE_HZ, 24);
            Process guide = sound.java(Main.class, "guide", "--json", "--instrument", "steel-string-guitar");
            ProgramLines said = new ProgramLines(guide);
            said.await("the first step", 30, line -> line.contains("\"step\":\"quiet\"") && line.contains("\"state\":\"running\""));
            sound.play(playing, "guitar");
            for (String step : new String[] {"soft", "hard", "play"}) {
                said.await(step, 60, line -> line.contains("\"step\":\"" + step + "\""));
            }
            JsonNode result = JSON.readTree(said.await("the result", 120, line -> line.contains("evenwood.check/1")).text());
            assertThat(guide.waitFor(20, TimeUnit.SECONDS)).isTrue();
            assertThat(guide.exitValue()).isIn(0, 1);
            assertThat(result.at("/level/hardDbfs").asDouble() - result.at("/level/softDbfs").asDouble()).isGreaterThan(GuidedCheck.HARDER_BY_DB);
            assertThat(result.at("/tone/instrument").asText()).isEqualTo("steel-string-guitar");
            assertThat(result.at("/missing").toString()).as("nothing of rest, notes or dynamics is missing").doesNotContain("rest").doesNotContain("notes");
        }
    }
}
