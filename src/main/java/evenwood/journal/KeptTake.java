package evenwood.journal;

import evenwood.coach.Assessment;
import evenwood.rig.Rig;
import java.util.Optional;

/**
 * A take as it was kept.
 *
 * @param line       its line in the list
 * @param assessment readings, findings and moves of that day
 * @param rig        as it stood that day
 */
public record KeptTake(TakeLine line, Assessment assessment, Optional<Rig> rig) { }
