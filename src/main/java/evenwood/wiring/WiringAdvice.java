package evenwood.wiring;

import java.util.Optional;

/**
 * What would be better.
 *
 * @param atHand   the best way with the gear at hand, when it is better than now
 * @param buyFirst the best way with one thing more, when that beats everything at hand
 */
public record WiringAdvice(Optional<Alternative> atHand, Optional<Alternative> buyFirst) {
    public static final WiringAdvice NONE = new WiringAdvice(Optional.empty(), Optional.empty());
}
