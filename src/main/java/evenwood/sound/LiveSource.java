package evenwood.sound;

/**
 * A source that is happening now: sound that is not fetched in time is gone.
 *
 * <p>{@link #read} returns −1 only after {@link #close}; a device that stops delivering throws {@link SoundProblem}
 * midway. It delivers what there is without waiting for more than one block.
 */
public interface LiveSource extends SoundSource {
    /**
     * How far one channel of the device (counted from 1), heard or not, has moved lately: highest minus lowest sample
     * of the last stretch of about half a second, full scale 1.0. [any thread]
     */
    float recentSwing(int channel);
}
