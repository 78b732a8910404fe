/**
 * One live take: threads and what they may do.
 *
 * <p>Comes in: an open source and a listener that owns the meters. Goes out: every block to the listener, and an
 * immutable {@link evenwood.live.LiveState}. Must not know: devices (they are {@code sound}'s), words on a screen, JSON.
 */
package evenwood.live;
