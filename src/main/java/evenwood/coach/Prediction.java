package evenwood.coach;

import evenwood.eq.EqChain;
import evenwood.measure.ToneDifference;
import java.util.Optional;

/**
 * What the take would be after all moves.
 *
 * @param tone       the tone's difference to the wanted one, if a wanted one is known
 * @param peak       true peak
 * @param change     all moves as one chain that sound can pass: filters, and the gain of all gain moves
 */
public record Prediction(Optional<ToneDifference> tone, PeakAfter peak, EqChain change) { }
