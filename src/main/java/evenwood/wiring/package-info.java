/**
 * The electrical chain of a rig: response, level, headroom and noise at every joint, what is wrong there and what would be
 * better.
 *
 * <p>In: a {@link evenwood.rig.Connection}. Out: a {@link evenwood.wiring.ChainReport} and verdicts, all immutable numbers
 * and ids without words. Must not know sound, readings or sentences.
 */
package evenwood.wiring;
