/**
 * The noise hunt: one change at a time, measured before and after, until the cause is known.
 *
 * <p>In: a {@link evenwood.rig.HuntTable} and noise readings. Out: the next trial and a ranking of causes, as ids. Must not know
 * sentences, files or screens.
 */
package evenwood.coach.hunt;
