package evenwood.ui.screen;

import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.animation.AnimationTimer;

/** Looks once a frame whether there is something newer, and shows it; only between {@link #start} and {@link #stop}. */
final class Watch<T> {
    private final Supplier<T> newest;
    private final Consumer<T> show;
    private final AnimationTimer frames = new AnimationTimer() {
        @Override
        public void handle(long nanos) {
            look();
        }
    };
    private T shown;

    Watch(Supplier<T> newest, Consumer<T> show) {
        this.newest = newest;
        this.show = show;
    }

    /** Shows what there is, and from now on everything newer. */
    void start() {
        shown = newest.get();
        show.accept(shown);
        frames.start();
    }

    void stop() {
        frames.stop();
    }

    void look() {
        T now = newest.get();
        if (now != shown) {
            shown = now;
            show.accept(now);
        }
    }
}
