package evenwood.ui.screen;

import java.util.List;
import javafx.scene.layout.Region;

/**
 * One part of the journal page.
 *
 * @param id      its name; its words are {@code journal.section.ID}
 * @param node    what it looks like
 * @param watches the answers it waits for while the page is open
 */
record JournalSection(String id, Region node, List<Watch<?>> watches) { }
