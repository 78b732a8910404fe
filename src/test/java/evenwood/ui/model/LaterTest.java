package evenwood.ui.model;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.sound.SoundProblem;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class LaterTest {
    private final Later<String> later = new Later<>("evenwood-later-test");

    @Test
    void theNewestQuestionIsTheOneAnsweredAndTheOnesBetweenAreNeverBegun() throws InterruptedException {
        CountDownLatch mayGoOn = new CountDownLatch(1);
        CountDownLatch done = new CountDownLatch(1);
        AtomicInteger begun = new AtomicInteger();
        later.ask(() -> {
            mayGoOn.await();
            return "first";
        });
        later.ask(() -> "second " + begun.incrementAndGet());
        later.ask(() -> {
            done.countDown();
            return "third";
        });

        mayGoOn.countDown();
        done.await();
        awaitAnswer();

        assertThat(later.answer().value()).contains("third");
        assertThat(begun).hasValue(0);
    }

    @Test
    void whatGoesWrongIsASentenceAndNoStackTrace() {
        later.ask(() -> {
            throw SoundProblem.atStart("rig: it is gone; choose another");
        });
        awaitAnswer();

        assertThat(later.answer().value()).isEmpty();
        assertThat(later.answer().problem()).isEqualTo(new Problem("problem.other", List.of("rig: it is gone; choose another"), OptionalDouble.empty()));
    }

    @Test
    void evenAMistakeOfOursIsAnAnswer() {
        later.ask(() -> {
            throw new NoClassDefFoundError("evenwood/Missing");
        });
        awaitAnswer();

        assertThat(later.answer().problem().values()).containsExactly("evenwood/Missing");
    }

    @Test
    void aDroppedQuestionIsNotAnswered() throws InterruptedException {
        CountDownLatch mayGoOn = new CountDownLatch(1);
        later.ask(() -> {
            mayGoOn.await();
            return "too late";
        });
        later.drop();
        mayGoOn.countDown();
        CountDownLatch after = new CountDownLatch(1);
        later.ask(() -> {
            after.countDown();
            return "next";
        });
        after.await();
        awaitAnswer();

        assertThat(later.answer().value()).contains("next");
    }

    private void awaitAnswer() {
        while (later.isWaiting()) {
            java.util.concurrent.locks.LockSupport.parkNanos(2_000_000);
        }
    }
}
