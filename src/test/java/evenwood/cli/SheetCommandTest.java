package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.Needs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SheetCommandTest {
    @TempDir
    Path folder;

    @Test
    void aSheetIsWrittenWithTheCheckAndFromTheJournal() throws IOException {
        String journal = folder.resolve("journal.db").toString();
        Path html = folder.resolve("now.html");
        Spoken check = Spoken.by("check", "--demo", "--instrument", "octave-mandolin", "--sheet", html.toString(), "--keep", "--journal", journal);
        assertThat(check.err()).startsWith("Kept as take 1");
        assertThat(Files.readString(html)).contains("octave-mandolin", "Warnings");
        Path pdf = folder.resolve("set.pdf");
        assertThat(Spoken.by("journal", "show", "1", "1", "--sheet", pdf.toString(), "--journal", journal).exitCode()).isZero();
        assertThat(Files.readAllBytes(pdf)).startsWith("%PDF".getBytes());
        assertThat(Spoken.by("journal", "show", "1", "1", "--journal", journal).err()).startsWith("journal show: name one take;");
        assertThat(Spoken.by("journal", "show", "1", "1", "--sheet", "a.png", "--journal", journal).err())
            .isEqualTo("journal show: --sheet a.png, but a picture holds one take; for several name a file ending in .pdf or .html" + System.lineSeparator());
        assertThat(Spoken.by("check", "--demo", "--sheet", "a.doc").err())
            .isEqualTo("check: --sheet a.doc, but a name ending in .html, .pdf, .png or .svg is needed" + System.lineSeparator());
        assertThat(Spoken.by("journal", "show", "1", "--sheet", folder.resolve("no/a.pdf").toString(), "--journal", journal).err()).contains("cannot be written");
    }

    @Test
    void aFullDiskUnderAFileIsOneLineAndExitCodeThree() throws IOException {
        Needs.file("/dev/full");
        String journal = folder.resolve("journal.db").toString();
        for (String[] words : new String[][] {{"check", "--demo", "--sheet", full("a.html")}, {"journal", "export", full("a.json"), "--journal", journal},
            {"journal", "export", full("a.csv"), "--journal", journal}, {"render", "--demo", "-o", full("a.wav")}}) {
            Spoken spoken = Spoken.by(words);
            assertThat(spoken.err()).as(String.join(" ", words)).contains("cannot be written").hasLineCount(1);
            assertThat(spoken.exitCode()).as(String.join(" ", words)).isEqualTo(3);
        }
    }

    private String full(String name) throws IOException {
        return Files.createSymbolicLink(folder.resolve(name), Path.of("/dev/full")).toString();
    }
}
