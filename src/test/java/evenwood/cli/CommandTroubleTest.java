package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import evenwood.Needs;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What goes wrong is one line with what to do next, and nothing that was measured is lost. */
class CommandTroubleTest {
    private static final int RATE_HZ = PluckedTake.RATE_HZ;

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        check                          | check: name one take, or --demo; see evenwood check --help
        check a.wav --demo             | check: name one take, or --demo; see evenwood check --help
        check --demo --instrument cell | preset: no instruments with the id cell; did you mean cello?; all ids: evenwood presets list
        check --demo --like no.wav     | open no.wav: there is no such file; check the path
        check a.wav --channel 0        | open a.wav: channel=0 was asked for, but channels are counted from 1
        check --demo --moves m.json    | check: --moves says what was turned since an earlier take; name that with --after OLD
        listen --seconds 0             | listen: --seconds 0.0, but more than 0 is needed
        presets                        | presets: say list, show or verify; see evenwood presets --help
        presets show celo             | preset: nothing has the id celo; did you mean cello?; all ids: evenwood presets list
        """)
    void badUsageIsOneLineAndExitCodeTwo(String words, String answer) {
        Spoken spoken = Spoken.by(words.split(" "));
        assertThat(spoken.err()).isEqualTo(answer + System.lineSeparator());
        assertThat(spoken.out()).isEmpty();
        assertThat(spoken.exitCode()).isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"chek x", "check --jsn x", "check --channel two x", "listen --sekonds 3", "check a b"})
    void aMistypedWordIsOneLineToo(String words) {
        Spoken spoken = Spoken.by(words.split(" "));
        assertThat(spoken.err().lines()).hasSize(1);
        assertThat(spoken.err()).contains("--help").doesNotContain("Exception");
        assertThat(spoken.exitCode()).isEqualTo(2);
    }

    @Test
    void aFileThatIsNoSoundIsOneLineAndExitCodeTwo() throws IOException {
        Path text = Files.writeString(folder.resolve("notes.txt"), "Buy strings.");
        Spoken spoken = Spoken.by("check", text.toString());
        assertThat(spoken.err().lines()).hasSize(1);
        assertThat(spoken.err()).contains("notes.txt");
        assertThat(spoken.exitCode()).isEqualTo(2);
    }

    @Test
    void aFileThatWasCutShortIsMeasuredAndSaidToBe() throws IOException {
        Path whole = plucked(0.3);
        byte[] bytes = Files.readAllBytes(whole);
        Path half = Files.write(folder.resolve("half.wav"), java.util.Arrays.copyOf(bytes, 44 + 7 * RATE_HZ * 3));
        Spoken spoken = Spoken.by("check", half.toString(), "--json");
        assertThat(spoken.err()).isEqualTo("read " + half + ": the file is cut short after 7.00 s; what came before is kept, record or export it again"
            + System.lineSeparator());
        assertThat(new ObjectMapper().readTree(spoken.out()).at("/take/durationSeconds").doubleValue()).isEqualTo(7.0);
        assertThat(spoken.exitCode()).isEqualTo(2);
    }

    @ParameterizedTest
    @CsvSource({"flac, the FLAC file is cut short", "ogg, the Ogg Vorbis file is cut short", "mp3, the MP3 file is cut short"})
    void aCutFileOfAnyKindIsMeasuredSaidToBeCutAndRendered(String ending, String words) throws Exception {
        Needs.program("ffmpeg");
        Path whole = plucked(0.3);
        Path coded = folder.resolve("whole." + ending);
        assertThat(new ProcessBuilder("ffmpeg", "-v", "error", "-i", whole.toString(), coded.toString()).inheritIO().start().waitFor()).isZero();
        byte[] bytes = Files.readAllBytes(coded);
        Path cut = Files.write(folder.resolve("cut." + ending), java.util.Arrays.copyOf(bytes, bytes.length * 2 / 3));
        Spoken spoken = Spoken.by("check", cut.toString(), "--json");
        assertThat(spoken.err()).startsWith("read " + cut + ": " + words + " after ").hasLineCount(1);
        assertThat(new ObjectMapper().readTree(spoken.out()).at("/level/hardDbfs").isNumber()).isTrue();
        assertThat(spoken.exitCode()).isEqualTo(2);
        Path rendered = folder.resolve("rendered.wav");
        Spoken written = Spoken.by("render", cut.toString(), "-o", rendered.toString());
        assertThat(written.err()).isEqualTo(spoken.err());
        assertThat(written.exitCode()).isEqualTo(2);
        assertThat(Files.size(rendered)).isGreaterThan(5 * RATE_HZ * 3);
    }

    @ParameterizedTest
    @ValueSource(strings = {"check TAKE --json", "check TAKE", "presets list", "--help"})
    void aFullDiskIsOneLineAndExitCodeThree(String words) throws IOException {
        Needs.file("/dev/full");
        try (OutputStream full = new FileOutputStream("/dev/full")) {
            Spoken spoken = Spoken.into(full, "", words.replace("TAKE", plucked(0.3).toString()).split(" "));
            assertThat(spoken.err()).startsWith("evenwood: the result cannot be written to its end (").endsWith(
                "); make room there, or send it elsewhere" + System.lineSeparator()).hasLineCount(1);
            assertThat(spoken.exitCode()).isEqualTo(3);
        }
    }

    @Test
    void aReaderWhoHasEnoughIsNoTrouble() {
        OutputStream closed = new OutputStream() {
            @Override
            public void write(int oneByte) throws IOException {
                throw new IOException("Broken pipe");
            }
        };
        Spoken spoken = Spoken.into(closed, "", "presets", "list");
        assertThat(spoken.err()).isEmpty();
        assertThat(spoken.exitCode()).isZero();
    }

    private Path plucked(double amplitude) {
        return PluckedTake.written(folder.resolve("take.wav"), amplitude);
    }
}
