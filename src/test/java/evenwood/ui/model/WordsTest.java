package evenwood.ui.model;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.journal.JournalTrouble;
import evenwood.judge.Fault;
import evenwood.judge.Severity;
import evenwood.rig.PresetKind;
import evenwood.rig.Presets;
import evenwood.sound.SoundTrouble;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class WordsTest {
    private static final Path RESOURCES = Path.of("src/main/resources/evenwood/ui");
    private static final Path CODE = Path.of("src/main/java/evenwood/ui");
    private static final Pattern KEY = Pattern.compile("[sS]ay(?:Or)?\\(\"([a-z0-9.-]*[a-z0-9-])\"");
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");
    private static final Pattern TEXT = Pattern.compile("\\p{L}{2,} \\p{L}{2,}");

    @Test
    void bothLanguagesSayTheSameThings() {
        assertThat(properties("words_de.properties").stringPropertyNames()).isEqualTo(properties("words.properties").stringPropertyNames());
    }

    @Test
    void bothLanguagesTakeTheSameFigures() {
        Properties english = properties("words.properties");
        Properties german = properties("words_de.properties");
        for (String key : english.stringPropertyNames()) {
            assertThat(figures(german.getProperty(key))).as(key).isEqualTo(figures(english.getProperty(key)));
        }
    }

    @Test
    void everyKeyInTheCodeHasWords() {
        Set<String> known = properties("words.properties").stringPropertyNames();
        for (Path file : sources()) {
            KEY.matcher(read(file)).results().forEach(found -> assertThat(known).as(file.toString()).contains(found.group(1)));
        }
    }

    @Test
    void noTextForPeopleStandsInTheCode() {
        for (Path file : sources()) {
            for (String line : read(file).split("\n")) {
                if (line.contains("Exception(") || line.contains("LOG.") || line.strip().matches("(/\\*\\*|\\*).*") || line.contains("+ \", but")) {
                    continue;
                }
                LITERAL.matcher(line).results().map(found -> found.group(1))
                    .forEach(text -> assertThat(TEXT.matcher(text).find()).as(file + ": \"" + text + "\"").isFalse());
            }
        }
    }

    @Test
    void everyShippedPresetThatCanBeChosenHasAGermanName() {
        Presets presets = new Presets(Path.of("no-presets-of-ones-own"));
        Properties names = properties("words_de.properties");
        for (PresetKind kind : new PresetKind[] {PresetKind.INSTRUMENTS, PresetKind.PICKUPS, PresetKind.BOXES, PresetKind.INPUTS, PresetKind.CONTROLS}) {
            for (String id : presets.ids(kind)) {
                assertThat(names.getProperty("preset." + kind.folder() + "." + id)).as(kind.folder() + "." + id).isNotBlank();
            }
        }
    }

    @Test
    void everyFaultAndSeverityHasAWord() {
        for (Locale locale : Words.LANGUAGES) {
            Words words = Words.in(locale);
            for (Fault fault : Fault.values()) {
                assertThat(words.fault(fault)).isNotBlank();
            }
            for (Severity severity : Severity.values()) {
                assertThat(words.severity(severity)).isNotBlank();
            }
        }
    }

    @Test
    void everyTroubleWithAFileOrDeviceHasASentenceAndSomethingToDo() {
        for (Locale locale : Words.LANGUAGES) {
            for (SoundTrouble trouble : SoundTrouble.values()) {
                String sentence = Words.in(locale).say(new Problem("problem." + trouble.id(), List.of("x", 3, 2), OptionalDouble.of(1.5)));
                assertThat(sentence).as(trouble.id()).doesNotContain("{").contains(locale.equals(Locale.GERMAN) ? "1,5 s" : "1.5 s");
            }
        }
    }

    @Test
    void everyTroubleWithTheJournalHasASentence() {
        for (Locale locale : Words.LANGUAGES) {
            for (JournalTrouble trouble : JournalTrouble.values()) {
                if (trouble != JournalTrouble.OTHER) {
                    String sentence = Words.in(locale).say(new Problem("problem.journal-" + trouble.id(), List.of(12L), OptionalDouble.empty()));
                    assertThat(sentence).as(trouble.id()).contains("12").doesNotContain("{").endsWith(".");
                }
            }
        }
    }

    @Test
    void numbersAreWrittenInTheLanguagesOwnWayWithARealMinus() {
        assertThat(Words.in(Locale.ENGLISH).level(-12.34, "unit.dbtp")).isEqualTo("−12.3 dBTP");
        assertThat(Words.in(Locale.GERMAN).level(-12.34, "unit.dbtp")).isEqualTo("−12,3 dBTP");
        assertThat(Words.in(Locale.GERMAN).frequency(2500)).isEqualTo("2,5 kHz");
        assertThat(Words.in(Locale.ENGLISH).frequency(420)).isEqualTo("420 Hz");
        assertThat(Words.in(Locale.ENGLISH).change(3)).isEqualTo("+3 dB");
    }

    @Test
    void silenceIsADashAndNoNumber() {
        assertThat(Words.in(Locale.ENGLISH).level(Double.NEGATIVE_INFINITY, "unit.dbtp")).isEqualTo("–");
    }

    @Test
    void anUnknownLanguageGetsEnglish() {
        assertThat(Words.in(Locale.JAPANESE).locale()).isEqualTo(Locale.ENGLISH);
        assertThat(Words.in(Locale.forLanguageTag("de-AT")).locale()).isEqualTo(Locale.GERMAN);
    }

    private static Set<Integer> figures(String pattern) {
        Set<Integer> figures = new TreeSet<>();
        Pattern.compile("\\{(\\d)").matcher(pattern).results().forEach(found -> figures.add(Integer.parseInt(found.group(1))));
        assertThat(new MessageFormat(pattern)).isNotNull();
        return figures;
    }

    private static List<Path> sources() {
        try (Stream<Path> files = Files.walk(CODE)) {
            return files.filter(file -> file.toString().endsWith(".java")).toList();
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }

    private static Properties properties(String name) {
        Properties properties = new Properties();
        try (var reader = Files.newBufferedReader(RESOURCES.resolve(name))) {
            properties.load(reader);
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
        return properties;
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }
}
