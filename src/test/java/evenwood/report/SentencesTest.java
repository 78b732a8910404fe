package evenwood.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.judge.Statement;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class SentencesTest {
    private static final Pattern KEY = Pattern.compile("\"((?:" + "clipping|overdriven|too-hot|too-quiet|hum|buzz|hiss|tone-interference|crackle|dropout|ringing"
        + "|control|gain|eq|after|learn|missing|guide|loaded-pickup|wiring-heard)\\.[a-z-]+)\"");

    @Test
    void everyStatementTheRulesMakeHasASentence() throws IOException {
        Set<String> keys = new TreeSet<>();
        for (String folder : new String[] {"judge", "coach", "cli", "eq"}) {
            Path path = Path.of("src/main/java/evenwood", folder);
            if (Files.isDirectory(path)) {
                try (Stream<Path> files = Files.walk(path)) {
                    for (Path file : files.filter(Files::isRegularFile).toList()) {
                        KEY.matcher(Files.readString(file)).results().map(result -> result.group(1)).forEach(keys::add);
                    }
                }
            }
        }
        assertThat(keys).hasSizeGreaterThan(20);
        for (String key : keys) {
            assertThat(Sentences.english().say(key, 1.0, 2.0, 3.0, 0)).as(key).isNotBlank();
        }
    }

    @Test
    void numbersAreWrittenInTheLanguagesOwnWay() {
        assertThat(Sentences.english().say(Statement.of("hum.evidence", 50.02, -48.04, 24.0, 0)))
            .isEqualTo("Hum of 50.02 Hz mains at −48.0 dBFS, 24 dB under your playing");
        assertThat(Sentences.in(Locale.GERMAN).say("hum.evidence", 50.02, -48.04, 24.0, 0)).contains("50,02 Hz").contains("−48,0");
    }

    @Test
    void nothingHasNoSign() {
        assertThat(Sentences.english().say("learn.level", "5", -0.02, 1.0)).isEqualTo("at 5: 0.0 dB (±1.0)");
        assertThat(Sentences.english().say("learn.level", "5", 0.02, 1.0)).isEqualTo("at 5: 0.0 dB (±1.0)");
        assertThat(Sentences.english().say("learn.level", "5", -0.2, 1.0)).isEqualTo("at 5: −0.2 dB (±1.0)");
        assertThat(Sentences.in(Locale.GERMAN).say("learn.level", "5", -0.02, 1.0)).isEqualTo("bei 5: 0,0 dB (±1,0)");
    }

    @Test
    void oneIsNotMany() {
        assertThat(Sentences.english().say("crackle.evidence", 1)).startsWith("One click,");
        assertThat(Sentences.english().say("crackle.evidence", 1200)).startsWith("1,200 clicks,");
    }

    @Test
    void aHyphenInAWordStaysOne() {
        Matcher word = Pattern.compile("A-weighted|full-scale").matcher(Sentences.english().say("control.own", "full-scale"));
        assertThat(word.find()).isTrue();
    }

    @Test
    void everyLanguageHasEverySentenceWithTheSameFigures() throws IOException {
        Map<String, String> english = sentences("sentences.properties");
        Map<String, String> german = sentences("sentences_de.properties");
        assertThat(german.keySet()).isEqualTo(english.keySet());
        for (String key : english.keySet()) {
            assertThat(figures(german.get(key))).as(key).isEqualTo(figures(english.get(key)));
            assertThat(Sentences.in(Locale.GERMAN).say(key, 1, 2, 3, 0, 5, 6)).as(key).isNotBlank();
        }
    }

    private static Map<String, String> sentences(String file) throws IOException {
        Map<String, String> sentences = new TreeMap<>();
        try (Reader reader = Files.newBufferedReader(Path.of("src/main/resources/evenwood/report", file))) {
            Properties properties = new Properties();
            properties.load(reader);
            properties.stringPropertyNames().forEach(key -> sentences.put(key, properties.getProperty(key)));
        }
        return sentences;
    }

    private static Set<String> figures(String sentence) {
        return new TreeSet<>(Pattern.compile("\\{\\d").matcher(sentence).results().map(MatchResult::group).toList());
    }
}
