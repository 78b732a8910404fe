/**
 * What was kept: takes with all their readings, findings, moves, rig and notes; events such as new strings; practice.
 *
 * <p>In: an {@link evenwood.coach.Assessment}, a {@link evenwood.rig.Rig}, words of the player. Out: the same, compared and
 * trended. Knows no screen, no device and no words: what it concludes are numbers and names. Only here SQL is spoken.
 */
package evenwood.journal;
