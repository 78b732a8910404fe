package evenwood.coach;

import evenwood.judge.Fault;
import evenwood.judge.Statement;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One thing to do: a control, from where to where, and why.
 *
 * @param order       1 is the first to make
 * @param control     the control's name: the player's own, or a plain one said from the word files
 * @param kind        what sort of control it is
 * @param frequencyHz where a filter acts, if it has a frequency
 * @param q           width, the audio EQ cookbook's Q, if it has one
 * @param fromDb      setting now, if the control counts in decibels
 * @param toDb        setting afterwards
 * @param changeDb    how far it moves: positive is up or boost
 * @param from        position now in the control's own marking, if known
 * @param to          position afterwards in the control's own marking
 * @param why         the reason in one sentence
 * @param fault       the finding it answers
 */
public record Move(int order, Control control, Kind kind, OptionalDouble frequencyHz, OptionalDouble q,
                   OptionalDouble fromDb, OptionalDouble toDb, OptionalDouble changeDb,
                   Optional<String> from, Optional<String> to, Statement why, Fault fault) {
    /** What is done where nothing is turned: plugging in otherwise, or putting it elsewhere. */
    public Statement withoutTurning() {
        return Statement.of(fault == Fault.LOADED_PICKUP ? "move.plug" : "move.place");
    }

    /** What sort of control a move turns; the ids are part of the JSON contract. */
    public enum Kind {
        GAIN("gain"), VOLUME("volume"), LOW_SHELF("low-shelf"), HIGH_SHELF("high-shelf"), PEAK("peak"),
        HIGH_PASS("high-pass"), NOTCH("notch"), WIRING("wiring");

        private final String id;

        Kind(String id) {
            this.id = id;
        }

        public String id() {
            return id;
        }
    }

    /** A control's name: either the player's own word for it, or a plain one said from the word files. */
    public record Control(Optional<String> ownName, Statement plainName) {
        public static Control plain(String key, Object... figures) {
            return new Control(Optional.empty(), Statement.of(key, figures));
        }

        public static Control own(String name) {
            return new Control(Optional.of(name), Statement.of("control.own", name));
        }
    }

    /** The same in another place among the moves. */
    Move withOrder(int newOrder) {
        return new Move(newOrder, control, kind, frequencyHz, q, fromDb, toDb, changeDb, from, to, why, fault);
    }

    /** A gain change by so many decibels, with no scale to name a position on. */
    public static Move gain(int order, Control control, double changeDb, Statement why, Fault fault) {
        return new Move(order, control, Kind.GAIN, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(),
            OptionalDouble.empty(), OptionalDouble.of(changeDb), Optional.empty(), Optional.empty(), why, fault);
    }
}
