package evenwood.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalExportTest {
    @TempDir
    Path folder;

    @Test
    void whatIsExportedAndTakenInIsTheSameBitForBit() {
        Path file = folder.resolve("all.json");
        byte[] sound = {1, 2, -3, 127};
        try (Journal journal = filled()) {
            journal.keepNow(KeptExamples.sketch(KeptExamples.EVENING.plusDays(3), new TakeWords("oud", "a, \"b\"", "two\nlines", List.of("x"))).withFlac(sound));
            journal.addNow(new Event("e", KeptExamples.EVENING, EventKind.NEW_STRINGS, "", "light"));
            journal.addNow(new Practice("p", KeptExamples.EVENING, "", new Practice.Figures(1, 2, 3, Double.NEGATIVE_INFINITY, 5, 6, 7, 8, 9, 10, -0.0, 12)));
            JournalExport.write(journal, TakeFilter.ALL, true, file);
            try (Journal other = Journal.open(folder.resolve("other.db"))) {
                assertThat(JournalExport.read(file, other)).isEqualTo(2);
                assertThat(JournalExport.read(file, other)).as("a second time nothing is new").isZero();
                assertThat(other.events()).isEqualTo(journal.events());
                assertThat(other.practice()).isEqualTo(journal.practice());
                for (TakeLine line : journal.list(TakeFilter.ALL)) {
                    TakeLine there = other.list(TakeFilter.ALL).stream().filter(each -> each.uid().equals(line.uid())).findFirst().orElseThrow();
                    assertThat(StoredForm.json(other.take(there.id()).assessment())).isEqualTo(StoredForm.json(journal.take(line.id()).assessment()));
                    assertThat(other.take(there.id()).rig()).isEqualTo(journal.take(line.id()).rig());
                    assertThat(there).usingRecursiveComparison().ignoringFields("id").isEqualTo(line);
                }
                for (Reading reading : Reading.ALL) {
                    assertThat(values(other, reading)).isEqualTo(values(journal, reading));
                }
                assertThat(other.flac(2)).hasValueSatisfying(bytes -> assertThat(bytes).isEqualTo(sound));
            }
        }
    }

    @Test
    void aTableHasALineATakeAndAColumnAReading() throws IOException {
        Path file = folder.resolve("all.csv");
        try (Journal journal = filled()) {
            journal.keepNow(KeptExamples.sketch(KeptExamples.EVENING.plusDays(3), new TakeWords("oud", "a, \"b\"", "", List.of())));
            JournalTable.write(journal, TakeFilter.ALL, file);
        }
        List<String> lines = Files.readString(file).lines().toList();
        assertThat(lines).hasSize(3);
        assertThat(lines.get(0)).startsWith("id,keptAt,name,durationSeconds,instrument,rig,venue,note,tags,findings,truePeakDbtp,integratedLufs,")
            .endsWith("band16000Db");
        assertThat(lines.get(1)).startsWith("2,2026-03-17T20:15:30.125+01:00,sketch,58.0,oud,,\"a, \"\"b\"\"\",,,").contains(",-9.0,,");
    }

    @Test
    void aFileThatIsNoJournalIsOneLine() throws IOException {
        try (Journal journal = filled()) {
            Path text = Files.writeString(folder.resolve("a.json"), "[1]");
            assertThatThrownBy(() -> JournalExport.read(text, journal)).hasMessage("journal import: " + text
                + " is no whole journal (it does not begin with {); what could be read before was taken in; use what evenwood journal export writes");
            Path newer = Files.writeString(folder.resolve("b.json"), "{\"schema\": \"evenwood.journal/9\"}");
            assertThatThrownBy(() -> JournalExport.read(newer, journal)).hasMessageContaining("(its schema is evenwood.journal/9, but evenwood.journal/1 is understood)");
            assertThatThrownBy(() -> JournalExport.read(folder.resolve("no.json"), journal)).hasMessageContaining("no.json does not exist");
            Path half = folder.resolve("half.json");
            JournalExport.write(journal, TakeFilter.ALL, false, half);
            Files.writeString(half, Files.readString(half).substring(0, 500));
            assertThatThrownBy(() -> JournalExport.read(half, journal)).isInstanceOf(JournalProblem.class).hasMessageContaining("is no whole journal");
            assertThatThrownBy(() -> JournalExport.write(journal, TakeFilter.ALL, false, folder.resolve("no/where.json"))).hasMessageContaining("cannot be written");
        }
    }

    private Journal filled() {
        Journal journal = Journal.open(folder.resolve("journal.db"));
        journal.keepNow(KeptExamples.measured());
        return journal;
    }

    private static List<Double> values(Journal journal, Reading reading) {
        return journal.points(reading.name(), TakeFilter.ALL).stream().map(ReadingPoint::value).toList();
    }
}
