package evenwood.wiring;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.rig.Connection;
import evenwood.rig.Rig;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class RigQuestionsTest {
    @TempDir
    Path folder;

    private final RigQuestions questions = new RigQuestions(Plugged.PRESETS);

    static LongStream seeds() {
        return LongStream.range(0, 40);
    }

    /** Whatever is answered, the rig file can be read and computed. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void anyAnswersMakeARigThatCanBeRead(long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        List<String> answers = new ArrayList<>();
        for (Optional<Question> next = questions.next(answers); next.isPresent(); next = questions.next(answers)) {
            String answer = any(next.get(), random);
            assertThat(next.get().accepts(answer)).as("%s: %s", next.get().key(), answer).isTrue();
            answers.add(answer);
            assertThat(answers).hasSizeLessThan(60);
        }
        Path file = Files.writeString(folder.resolve("rig.yaml"), questions.rig(answers));
        Connection connection = Rig.read(file, Plugged.PRESETS).connection().orElseThrow();
        assertThat(ChainAnalysis.of(connection, 82.4).joints()).isNotEmpty().allSatisfy(joint -> {
            assertThat(joint.usualDbu()).isFinite();
            assertThat(joint.noiseDbu()).isFinite();
            assertThat(joint.loadingDb()).isFinite();
        });
    }

    private static String any(Question question, SplittableRandom random) {
        return switch (question.kind()) {
            case ONE -> String.valueOf(1 + random.nextInt(question.options().size()));
            case MANY -> random.nextBoolean() ? "" : "1, " + question.options().size();
            case NUMBER -> String.valueOf(random.nextInt(2000) / 10.0);
            case NUMBER_IF_KNOWN -> random.nextBoolean() ? "" : String.valueOf(random.nextInt(200) - 100);
            case YES_NO -> random.nextBoolean() ? "yes" : "n";
            case YES_NO_IF_KNOWN -> random.nextInt(3) == 0 ? "" : random.nextBoolean() ? "Y" : "no";
            case TEXT -> "A \"rig\": {1} #" + random.nextInt(100);
        };
    }

    @Test
    void takingAnswersBackAsksThemAgain() {
        List<String> answers = new ArrayList<>(List.of("Mine", "violin", "piezo-disc"));
        assertThat(questions.next(answers).orElseThrow().key()).isEqualTo("ask.cable");
        answers.remove(2);
        assertThat(questions.next(answers).orElseThrow().key()).isEqualTo("ask.pickup");
    }

    @Test
    void anAnswerThatIsNoneIsAskedAgain() {
        assertThat(questions.next(List.of("Mine", "tuba")).orElseThrow().key()).isEqualTo("ask.instrument");
    }
}
