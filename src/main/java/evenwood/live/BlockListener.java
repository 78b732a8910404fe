package evenwood.live;

import evenwood.sound.AudioBlock;

/** What hears a live take: the owner of the meters. Everything is called on the analysis thread, in order. */
@FunctionalInterface
public interface BlockListener {
    /** One block; start frames count what was heard, without gaps. Must keep none of it. */
    void accept(AudioBlock block);

    /** So many frames are missing between the last block and the next one: a step there is not the player's. */
    default void gap(long lostFrames) { }
}
