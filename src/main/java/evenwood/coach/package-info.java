/**
 * Findings become one to three moves, and afterwards the answer to "was it better?".
 *
 * <p>In: findings, readings, the rig's controls. Out: {@link evenwood.coach.Move}. Must not know files, screens or threads.
 */
package evenwood.coach;
