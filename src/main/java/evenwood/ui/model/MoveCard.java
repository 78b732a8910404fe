package evenwood.ui.model;

import evenwood.coach.Move;
import evenwood.judge.Fault;
import evenwood.rig.Control;
import evenwood.rig.Dial;
import evenwood.rig.Rig;
import evenwood.rig.Scale;
import evenwood.rig.Setting;
import java.util.Optional;

/**
 * One move as a picture of the player's own control.
 *
 * @param order    1 is made first
 * @param control  its name
 * @param shape    what it looks like
 * @param fromPart where it stands, 0 to 1 of its way
 * @param toPart   where it should stand
 * @param from     the same in its own marking
 * @param to       and afterwards
 * @param action   what to do, in a few words
 * @param why      the reason in one sentence
 * @param fault    what it is against, in a word
 */
public record MoveCard(int order, String control, Shape shape, double fromPart, double toPart, String from, String to, String action,
                       String why, String fault) {
    /** What a control looks like. A turn is a knob of which nobody knows where it stands: only how far it goes. */
    public enum Shape { KNOB, FADER, SWITCH, TURN }

    /** A plain equaliser band is drawn with this much either way. */
    private static final double PLAIN_RANGE_DB = 18;

    public static MoveCard of(Move move, Optional<Rig> rig, Words words) {
        Optional<Setting> setting = move.control().ownName().flatMap(name -> rig.flatMap(each -> each.setting(name)));
        String name = setting.map(each -> each.control().name()).orElseGet(() -> words.say(move.control().plainName()));
        String from = move.from().map(text -> Positions.say(text, words)).orElse("");
        String to = move.to().map(text -> Positions.say(text, words)).orElseGet(() -> move.changeDb().isPresent() ? words.change(move.changeDb().getAsDouble()) : "");
        Parts parts = setting.map(each -> ofOwn(each, move)).orElseGet(() -> ofPlain(move));
        String action = move.kind() == Move.Kind.WIRING ? words.say(move.withoutTurning()) : from.isEmpty() ? words.say(parts.to >= parts.from ? "move.up-by" : "move.down-by", words.number(Math.abs(move.changeDb().orElse(0)), 0))
            : words.say("move.from-to", from, to);
        String fault = words.fault(move.fault());
        return new MoveCard(move.order(), name, parts.shape, parts.from, parts.to, from, to, action, words.say(move.why()), fault);
    }

    private record Parts(Shape shape, double from, double to) { }

    private static Parts ofOwn(Setting setting, Move move) {
        Control control = setting.control();
        if (control.gain().isEmpty() || move.toDb().isEmpty()) {
            return new Parts(Shape.SWITCH, setting.on() ? 1 : 0, setting.on() ? 0 : 1);
        }
        Dial dial = control.gain().get();
        double from = setting.gain().orElse(dial.least());
        double to = dial.settable(dial.positionOfDb(move.toDb().getAsDouble()));
        Shape shape = dial.scale() == Scale.DB ? Shape.FADER : Shape.KNOB;
        return new Parts(shape, part(dial, from), part(dial, to));
    }

    private static Parts ofPlain(Move move) {
        double change = move.changeDb().orElse(0);
        if (move.kind() == Move.Kind.GAIN || move.kind() == Move.Kind.VOLUME) {
            double far = Math.max(-1, Math.min(1, change / PLAIN_RANGE_DB));
            return new Parts(Shape.TURN, 0.5, 0.5 + far / 2);
        }
        if (move.changeDb().isEmpty()) {
            return new Parts(Shape.SWITCH, 0, 1);
        }
        return new Parts(Shape.FADER, 0.5, 0.5 + Math.max(-1, Math.min(1, change / PLAIN_RANGE_DB)) / 2);
    }

    private static double part(Dial dial, double position) {
        return (position - dial.least()) / (dial.most() - dial.least());
    }

    /** Whether the tone is moved, so that it can be heard beforehand. */
    public static boolean isHeard(Move move) {
        return move.fault() != Fault.OVERDRIVEN && move.fault() != Fault.CLIPPING;
    }
}
