package evenwood.ui.model;

import evenwood.eq.ControlEffect;
import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.rig.Setting;
import java.util.List;

/** The demo's invented amp, whose controls do not quite do what their marking says: so that there is something to learn. */
final class DemoAmp {
    private static final double HIGHER = 1.5;
    private static final double WEAKER = 0.7;

    private DemoAmp() { }

    /** @param from where the control stood when the demo sounded as it does */
    static EqChain at(Setting from, Setting to) {
        return ControlEffect.filter(to).map(filter -> new EqChain(0, List.of(really(filter))))
            .orElseGet(() -> new EqChain(WEAKER * (ControlEffect.gainDb(to) - ControlEffect.gainDb(from)), List.of()));
    }

    private static EqFilter really(EqFilter marked) {
        return new EqFilter(marked.kind(), HIGHER * marked.frequencyHz(), marked.q(), WEAKER * marked.gainDb(), marked.order());
    }
}
