package evenwood.ui.model;

import evenwood.live.Listening;
import evenwood.live.LivePicture;
import evenwood.live.LiveState;
import evenwood.measure.TakeReadings;
import java.util.Optional;

/** The live take that is on, if one is, and what of it was looked at already. Thread: one. */
final class HeardLive {
    private Optional<Listening> listening = Optional.empty();
    private int take = -1;
    private long lookedNumber;
    private TakeReadings judged;

    void begin(Listening begun, int takeNumber) {
        listening = Optional.of(begun);
        take = takeNumber;
        lookedNumber = -1;
        judged = null;
    }

    boolean isOn() {
        return listening.isPresent();
    }

    /** The take it is, or was last. */
    int take() {
        return take;
    }

    /** The newest, if it is another than was looked at or shown. */
    Optional<LivePicture> news(Optional<LiveState> shown) {
        Optional<LivePicture> news = listening.map(Listening::picture)
            .filter(picture -> picture.number() != lookedNumber || shown.isEmpty() || !shown.get().equals(picture.state()));
        news.ifPresent(picture -> lookedNumber = picture.number());
        return news;
    }

    /** Whether these readings are worth another judgement; asked once. */
    boolean isFresh(TakeReadings readings) {
        boolean fresh = judged == null || judged.activity() != readings.activity();
        judged = fresh ? readings : judged;
        return fresh;
    }

    void judgeAnew() {
        judged = null;
    }

    /** Ends it without a word: nobody wants to know any more, or it failed and that was said. */
    void letGo() {
        Optional<Listening> ending = listening;
        listening = Optional.empty();
        try {
            ending.ifPresent(Listening::close);
        } catch (RuntimeException | Error failed) {
            // Nothing of this take is shown any more, and the next one must not suffer for it.
        }
    }

    /** Ends it, whatever happens, and says what it measured last; empty when none was on. */
    Optional<LivePicture> end() {
        Optional<Listening> ending = listening;
        listening = Optional.empty();
        return ending.map(Listening::stop);
    }
}
