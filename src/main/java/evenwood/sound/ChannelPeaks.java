package evenwood.sound;

import java.util.List;
import java.util.OptionalInt;

/**
 * How loud each channel of a source has been, so that a silent take can be told from one on another channel.
 *
 * @param channel  the channel that is heard, counted from 1
 * @param peakDbfs highest sample of each channel, the first one first; −Infinity for a silent one
 */
public record ChannelPeaks(int channel, List<Double> peakDbfs) {
    /** Our choice: more than crosstalk in any working input, so the heard channel carries at most a ghost. */
    private static final double FAR_LOUDER_DB = 40;

    public ChannelPeaks {
        peakDbfs = List.copyOf(peakDbfs);
        if (channel < 1 || channel > peakDbfs.size() || peakDbfs.stream().anyMatch(peak -> peak.isNaN())) {
            throw new IllegalArgumentException("channel peaks: channel=" + channel + ", peakDbfs=" + peakDbfs
                + ", but the channel must be one of them and all must be numbers (−Infinity for silence)");
        }
    }

    public boolean isSilent() {
        return peakDbfs.get(channel - 1) == Double.NEGATIVE_INFINITY;
    }

    /** The loudest other channel, when it is at least 40 dB above the one that is heard. */
    public OptionalInt farLouderChannel() {
        int loudest = channel;
        for (int other = 1; other <= peakDbfs.size(); other++) {
            if (peakDbfs.get(other - 1) > peakDbfs.get(loudest - 1)) {
                loudest = other;
            }
        }
        boolean far = loudest != channel && peakDbfs.get(loudest - 1) - peakDbfs.get(channel - 1) >= FAR_LOUDER_DB;
        return far ? OptionalInt.of(loudest) : OptionalInt.empty();
    }
}
