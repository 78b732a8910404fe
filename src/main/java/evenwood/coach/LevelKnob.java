package evenwood.coach;

import evenwood.eq.BandResponse;
import evenwood.eq.ControlLaw;
import evenwood.eq.RigInUse;
import evenwood.judge.Fault;
import evenwood.judge.Statement;
import evenwood.measure.ThirdOctave;
import evenwood.rig.Control;
import evenwood.rig.Dial;
import evenwood.rig.Setting;
import evenwood.rig.Tap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A gain or volume that can be turned: one of the rig's own, in its own marking and within its stops, or just "the gain"
 * when no rig is known.
 */
final class LevelKnob {
    private static final BandResponse AT_1_KHZ = new BandResponse(List.of(new ThirdOctave(0)), 48_000);

    private final Move.Control name;
    private final Optional<Setting> setting;
    private final Optional<ControlLaw> law;

    private LevelKnob(Move.Control name, Optional<Setting> setting, Optional<ControlLaw> law) {
        this.name = name;
        this.setting = setting;
        this.law = law;
    }

    /** The gain in front of everything. */
    static LevelKnob first(Optional<RigInUse> rig) {
        return of(rig, "control.first-gain", true);
    }

    /** The gain just before the recorder. */
    static LevelKnob last(Optional<RigInUse> rig) {
        return of(rig, "control.last-gain", false);
    }

    /** Whichever is at hand. */
    static LevelKnob any(Optional<RigInUse> rig) {
        return of(rig, "control.gain", false);
    }

    /** The recorder's own, behind every box. */
    static LevelKnob recorder() {
        return new LevelKnob(Move.Control.plain("control.last-gain"), Optional.empty(), Optional.empty());
    }

    private static LevelKnob of(Optional<RigInUse> rig, String plainName, boolean first) {
        // Listening straight at the pickup, nothing that is turned behind it changes what is heard.
        List<Setting> levels = rig.filter(each -> each.rig().tap() != Tap.PICKUP)
            .map(each -> each.rig().settings().stream().filter(setting -> !setting.control().shapesTone()).toList()).orElse(List.of());
        if (levels.isEmpty()) {
            return new LevelKnob(Move.Control.plain(plainName), Optional.empty(), Optional.empty());
        }
        Setting chosen = first
            ? levels.stream().filter(setting -> setting.control().kind() == Control.Kind.GAIN).findFirst().orElse(levels.get(0))
            : levels.get(levels.size() - 1);
        return new LevelKnob(Move.Control.own(chosen.control().name()), Optional.of(chosen), Optional.of(rig.get().laws().of(chosen.control())));
    }

    Move.Control name() {
        return name;
    }

    boolean isSameAs(LevelKnob other) {
        return setting.isPresent() && setting.equals(other.setting);
    }

    /**
     * The move nearest to a wanted change.
     *
     * @param atMost the change must not be exceeded upwards: the gain goes at least so far down
     */
    Move move(double changeDb, boolean atMost, Statement why, Fault fault) {
        if (setting.isEmpty()) {
            return Move.gain(0, name, Math.rint(changeDb), why, fault);
        }
        Setting now = setting.get();
        Dial dial = now.control().gain().orElseThrow();
        Setting best = now.withGain(dial.least());
        for (double position : dial.positions()) {
            Setting there = now.withGain(position);
            if ((!atMost || change(there) <= changeDb) && Math.abs(change(there) - changeDb) < Math.abs(change(best) - changeDb)) {
                best = there;
            }
        }
        return new Move(0, name, now.control().kind() == Control.Kind.GAIN ? Move.Kind.GAIN : Move.Kind.VOLUME, OptionalDouble.empty(),
            OptionalDouble.empty(), OptionalDouble.of(now.gainDb()), OptionalDouble.of(now.gainDb() + change(best)),
            OptionalDouble.of(change(best)), Optional.of(now.say()), Optional.of(best.say()), why, fault);
    }

    private double change(Setting there) {
        return law.orElseThrow().bandsDb(there, AT_1_KHZ)[0] - law.get().bandsDb(setting.orElseThrow(), AT_1_KHZ)[0];
    }
}
