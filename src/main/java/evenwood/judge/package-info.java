/**
 * Readings become findings: what is wrong with a take, how much it matters and how sure we are.
 *
 * <p>In: readings of {@code measure}, facts of {@code rig}, predictions of {@code wiring}. Out: {@link evenwood.judge.Finding}.
 * Pure functions with sourced thresholds; must not know what can be turned.
 */
package evenwood.judge;
