package evenwood.coach;

import evenwood.eq.EqFilter;
import evenwood.eq.FilterKind;
import evenwood.eq.Turn;
import evenwood.judge.Fault;
import evenwood.judge.NarrowCut;
import evenwood.judge.Statement;
import evenwood.rig.Control;
import evenwood.rig.Scale;
import evenwood.rig.Setting;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Turns of the solver said as moves: in the control's own marking, or as decibels, hertz and Q without a rig. */
final class EqMoves {
    private static final Map<Fault, String> AGAINST = Map.of(Fault.BOOMY, "eq.against-boomy", Fault.BOXY, "eq.against-boxy",
        Fault.NASAL, "eq.against-nasal", Fault.HARSH, "eq.against-harsh", Fault.THIN, "eq.against-thin", Fault.DULL, "eq.against-dull");

    private EqMoves() { }

    static Move move(ToneCoach.Answer answer) {
        Turn turn = answer.turn();
        Fault fault = answer.finding().fault();
        Statement why = Statement.of(answer.directly() ? AGAINST.get(fault) : "eq.beside", turn.figures().sizeDb(), 2 * turn.figures().standardErrorDb());
        return turn.from().isPresent() ? ofRig(turn.from().get(), turn.to().orElseThrow(), why, fault) : ofPlainEq(turn.stage(), why, fault);
    }

    /** Against one note that jumps out. */
    static Move move(NarrowCut cut) {
        return new Move(0, Move.Control.plain("control.peak", cut.frequencyHz(), cut.q()), Move.Kind.PEAK, OptionalDouble.of(cut.frequencyHz()),
            OptionalDouble.of(cut.q()), OptionalDouble.of(0), OptionalDouble.of(cut.changeDb()), OptionalDouble.of(cut.changeDb()),
            Optional.of(Scale.DB.say(0)), Optional.of(Scale.DB.say(cut.changeDb())),
            Statement.of("eq.against-one-note", cut.note(), cut.frequencyHz()), cut.fault());
    }

    private static Move ofPlainEq(EqFilter stage, Statement why, Fault fault) {
        if (stage.kind() == FilterKind.HIGH_PASS) {
            return new Move(0, Move.Control.plain("control.high-pass", stage.frequencyHz(), stage.order()), Move.Kind.HIGH_PASS,
                OptionalDouble.of(stage.frequencyHz()), OptionalDouble.of(stage.q()), OptionalDouble.empty(), OptionalDouble.empty(),
                OptionalDouble.empty(), Optional.of("off"), Optional.of(Scale.HZ.say(stage.frequencyHz())), why, fault);
        }
        boolean peak = stage.kind() == FilterKind.PEAK;
        String name = peak ? "control.peak" : stage.kind() == FilterKind.LOW_SHELF ? "control.low-shelf" : "control.high-shelf";
        Move.Kind kind = peak ? Move.Kind.PEAK : stage.kind() == FilterKind.LOW_SHELF ? Move.Kind.LOW_SHELF : Move.Kind.HIGH_SHELF;
        return new Move(0, Move.Control.plain(name, stage.frequencyHz(), stage.q()), kind, OptionalDouble.of(stage.frequencyHz()),
            OptionalDouble.of(stage.q()), OptionalDouble.of(0), OptionalDouble.of(stage.gainDb()), OptionalDouble.of(stage.gainDb()),
            Optional.of(Scale.DB.say(0)), Optional.of(Scale.DB.say(stage.gainDb())), why, fault);
    }

    /** The same on a control of the rig. */
    static Move move(Setting from, Setting to, NarrowCut cut) {
        String why = from.control().gain().isPresent() ? "eq.against-one-note" : "eq.against-one-note-notch";
        return ofRig(from, to, Statement.of(why, cut.note(), cut.frequencyHz()), cut.fault());
    }

    private static Move ofRig(Setting from, Setting to, Statement why, Fault fault) {
        Control control = from.control();
        boolean gain = control.gain().isPresent();
        double fromDb = from.on() ? from.gainDb() : 0;
        double toDb = to.on() ? to.gainDb() : 0;
        return new Move(0, name(control, to.on() ? to : from), kind(control), OptionalDouble.of((to.on() ? to : from).frequencyHz()),
            OptionalDouble.of(control.q()), gain ? OptionalDouble.of(fromDb) : OptionalDouble.empty(),
            gain ? OptionalDouble.of(toDb) : OptionalDouble.empty(), gain ? OptionalDouble.of(toDb - fromDb) : OptionalDouble.empty(),
            Optional.of(from.say()), Optional.of(to.say()), why, fault);
    }

    /** A high-pass says what it is, because its name on the gear often does not. */
    private static Move.Control name(Control control, Setting setting) {
        return control.kind() == Control.Kind.HIGH_PASS
            ? new Move.Control(Optional.of(control.name()), Statement.of("control.own-high-pass", control.name(), setting.frequencyHz(), control.order()))
            : Move.Control.own(control.name());
    }

    private static Move.Kind kind(Control control) {
        return switch (control.kind()) {
            case GAIN -> Move.Kind.GAIN;
            case VOLUME -> Move.Kind.VOLUME;
            case LOW_SHELF -> Move.Kind.LOW_SHELF;
            case HIGH_SHELF -> Move.Kind.HIGH_SHELF;
            case PEAK -> Move.Kind.PEAK;
            case HIGH_PASS -> Move.Kind.HIGH_PASS;
            case NOTCH -> Move.Kind.NOTCH;
        };
    }
}
