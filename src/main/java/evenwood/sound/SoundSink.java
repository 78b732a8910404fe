package evenwood.sound;

/** Where sound goes to be heard or measured, block by block. */
public interface SoundSink {
    /** Takes one block and keeps none of it; may wait until there is room. */
    void write(AudioBlock block);
}
