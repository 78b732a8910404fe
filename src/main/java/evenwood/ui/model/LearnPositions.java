package evenwood.ui.model;

import evenwood.rig.Control;
import evenwood.rig.Dial;
import evenwood.rig.Setting;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * Where a control should stand while it is learned: at both ends and where it does nothing, because between learned positions its
 * curves are mixed.
 *
 * <p>A gain or volume is never turned up for it, only down from where it stands by 6 and 12 dB (up when it stands at its end):
 * louder could howl or distort. Our choice.
 */
final class LearnPositions {
    private static final double STEP_DB = 6;

    private LearnPositions() { }

    /** At least two where the control has as many, in the order they are played. @param now where it stands */
    static List<Setting> of(Setting now) {
        Control control = now.control();
        Setting on = now.switched(true);
        Stream<Setting> positions = !control.shapesTone() ? level(on) : control.gain().isPresent() ? gain(on, control.gain().get())
            : control.frequency().isPresent() ? Stream.concat(control.switched() ? Stream.of(on.switched(false)) : Stream.of(), frequency(on, control.frequency().get()))
            : Stream.of(on.switched(false), on);
        return positions.distinct().toList();
    }

    private static Stream<Setting> gain(Setting on, Dial dial) {
        return DoubleStream.of(dial.least(), dial.settable(dial.positionOfDb(0)), dial.most()).mapToObj(on::withGain);
    }

    private static Stream<Setting> frequency(Setting on, Dial dial) {
        return DoubleStream.of(dial.settable((dial.least() + dial.most()) / 2), dial.most()).mapToObj(on::withFrequency);
    }

    private static Stream<Setting> level(Setting on) {
        Dial dial = on.control().gain().orElseThrow();
        double nowDb = on.gainDb();
        List<Setting> down = DoubleStream.of(0, -STEP_DB, -2 * STEP_DB).mapToObj(db -> on.withGain(dial.settable(dial.positionOfDb(nowDb + db)))).distinct().toList();
        return down.size() > 1 ? down.stream() : Stream.of(on, on.withGain(dial.settable(dial.positionOfDb(nowDb + STEP_DB))));
    }
}
