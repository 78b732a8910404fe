package evenwood.ui.screen;

import java.util.List;

/** All pages, in the order of the navigation. */
final class Screens {
    private Screens() { }

    static List<Screen> all(Surroundings around) {
        return List.of(new SourceScreen(around), new PlayScreen(around), new GuideScreen(around), new WiringScreen(around), new HuntScreen(around),
            new RigScreen(around), new JournalScreen(around));
    }
}
