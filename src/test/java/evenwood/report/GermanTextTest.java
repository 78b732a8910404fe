package evenwood.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.RigFacts;
import evenwood.journal.Event;
import evenwood.journal.EventKind;
import evenwood.journal.KeptExamples;
import evenwood.journal.TakeLine;
import evenwood.rig.Presets;
import evenwood.takes.NoisyRig;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What the terminal says in German has no English left in it, and German numbers. */
class GermanTextTest {
    private static final Sentences GERMAN = Sentences.in(Locale.GERMAN);
    private static final String ENGLISH = ".*\\b(the|and|of|with|playing|usual|hard|loudest|peak|sure|turn|against|before|after|likeliest|noise|noticed|take|note)\\b.*";

    @Test
    void aCheckSpeaksGerman() {
        List<String> lines = CheckText.lines(KeptExamples.measured().assessment(), GERMAN, 100);
        // The first line is the take's own name.
        assertThat(lines.subList(1, lines.size())).noneMatch(line -> line.toLowerCase(Locale.ROOT).matches(ENGLISH)).anyMatch(line -> line.startsWith("!!! Brummen"))
            .anyMatch(line -> line.matches("Pegel +Spitze −\\d+,\\d dBTP.*")).contains("Dreh");
    }

    @Test
    void aHuntSpeaksGerman() {
        NoisyRig rig = new NoisyRig("cable-screen", 4);
        HuntProgress progress = HuntProgress.start(new Presets(Path.of("none")).hunt("noise"), RigFacts.ALL, rig.before(), Optional.empty());
        progress = progress.after("touch-strings", rig.after("touch-strings"));
        HuntPicture picture = HuntPicture.of(progress, GERMAN);
        assertThat(HuntText.lines(picture, GERMAN, 100)).noneMatch(line -> line.toLowerCase(Locale.ROOT).matches(ENGLISH))
            .contains("Das Störgeräusch, während niemand spielt", "Bisher am wahrscheinlichsten").anyMatch(line -> line.startsWith("  vorher  Brummen")).anyMatch(line -> line.startsWith("  nachher Brummen"));
    }

    @Test
    void theJournalSpeaksGerman() {
        JournalText text = new JournalText(GERMAN);
        TakeLine take = new TakeLine(7, "u", KeptExamples.EVENING, "a.wav", 60, "oud", "", "", "", List.of(), List.of("hum:strong", "boomy:slight"), true);
        assertThat(text.line(take)).contains("Brummen!!! dröhnt!", "(mit Ton)");
        assertThat(text.line(new Event("e", KeptExamples.EVENING, EventKind.NEW_STRINGS, "oud", ""))).isEqualTo("2026-03-14  neue Saiten, oud");
    }
}
