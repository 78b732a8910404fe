package evenwood.live;

import evenwood.coach.hunt.NoiseParts;

/**
 * A measurement of noise under way.
 *
 * @param done  how much of it is heard, 0 to 1
 * @param parts what is heard until now; the longer, the surer
 */
public record NoiseSoFar(double done, NoiseParts parts) { }
