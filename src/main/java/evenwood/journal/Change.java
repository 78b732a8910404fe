package evenwood.journal;

import java.time.Instant;
import java.util.Optional;

/**
 * A change of a reading that is no chance, at the confidence it names.
 *
 * @param kind       how it changed
 * @param from       first take it rests on; of a jump the last moment before it
 * @param to         last take it rests on; of a jump the first moment after it
 * @param amount     how far it went, in the reading's unit; positive is up
 * @param lowest     lower end of its confidence interval
 * @param highest    upper end
 * @param confidence such as 0.98: two in a hundred histories without a change would say so
 * @param takes      how many takes it rests on
 * @param event      what happened then, if the change is told at an event
 */
public record Change(Kind kind, Instant from, Instant to, double amount, double lowest, double highest, double confidence, int takes,
                     Optional<Event> event) {
    /** DRIFT: bit by bit. JUMP: from one take to the next. AT_EVENT: from before an event to after it. */
    public enum Kind { DRIFT, JUMP, AT_EVENT }
}
