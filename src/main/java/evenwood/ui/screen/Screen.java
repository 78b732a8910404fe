package evenwood.ui.screen;

import evenwood.ui.model.Now;
import javafx.scene.layout.Region;

/**
 * One page of the window. A new page is a class with this interface and a line in {@link Screens#all} ({@code docs/window.md}).
 *
 * <p>Thread: the screen's. Nothing here may wait.
 */
public interface Screen {
    /** Its key: the name in the navigation is {@code nav.ID} in the word files. */
    String id();

    /** What it looks like; made once. */
    Region node();

    /** The current take changed; called at most once a frame, and only while the page is open. */
    void show(Now now);

    /** The page was opened. */
    default void opened() { }

    /** The page was left: stop what costs anything. */
    default void closed() { }
}
