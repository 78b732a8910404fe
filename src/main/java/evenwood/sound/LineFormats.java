package evenwood.sound;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;

/**
 * In which order formats are asked for: 48 kHz and 24 bit first, then what loses least.
 *
 * <p>Our choice: more than 16 bits at any usual rate before 16 bits at a better one, because a quiet pickup is buried
 * by 16-bit noise long before it misses anything above 20 kHz; higher rates last of the good ones, because they cost
 * work and tell nothing more about a tone. Two channels before one for the first two, so that the other channel can be
 * watched and the system does not mix them; then even counts, which systems do not remix as readily.
 */
final class LineFormats {
    private static final int[] RATES_HZ = {48_000, 44_100, 96_000, 88_200, 192_000, 176_400, 32_000, 22_050, 16_000, 11_025, 8_000};
    private static final int[] FINE_BITS = {24, 32};
    private static final int[] COARSE_BITS = {16, 8};
    private static final int MOST_CHANNELS = 64;
    private static final int CHANNEL_COUNTS_TRIED = 3;
    private static final Comparator<AudioFormat> LITTLE_ENDIAN_FIRST = Comparator.comparing(AudioFormat::isBigEndian);

    private LineFormats() { }

    /** What to try on a line that names these formats, best first; empty when the channel cannot be had. */
    static List<AudioFormat> toTry(List<AudioFormat> offered, int channel) {
        List<Integer> channelCounts = channelCounts(offered, channel);
        Set<String> seen = new HashSet<>();
        List<AudioFormat> wanted = new ArrayList<>();
        for (int[] depths : new int[][] {FINE_BITS, COARSE_BITS}) {
            for (int rateHz : RATES_HZ) {
                for (int bits : depths) {
                    for (int channels : channelCounts) {
                        offered.stream()
                            .filter(format -> fits(format, rateHz, bits, channels))
                            .map(format -> exact(format, rateHz, channels))
                            .sorted(LITTLE_ENDIAN_FIRST)
                            .filter(format -> seen.add(format.toString()))
                            .forEach(wanted::add);
                    }
                }
            }
        }
        return wanted;
    }

    /** How the samples of a tried format are written. */
    static PcmCoding coding(AudioFormat format) {
        boolean big = format.isBigEndian();
        return switch (format.getSampleSizeInBits()) {
            case 8 -> PcmCoding.SIGNED_8;
            case 16 -> big ? PcmCoding.SIGNED_16_BIG : PcmCoding.SIGNED_16_LITTLE;
            case 24 -> big ? PcmCoding.SIGNED_24_BIG : PcmCoding.SIGNED_24_LITTLE;
            case 32 -> big ? PcmCoding.SIGNED_32_BIG : PcmCoding.SIGNED_32_LITTLE;
            default -> throw new IllegalArgumentException("line format: " + format + ", but 8, 16, 24 or 32 bits are read");
        };
    }

    private static boolean fits(AudioFormat format, int rateHz, int bits, int channels) {
        return AudioFormat.Encoding.PCM_SIGNED.equals(format.getEncoding())
            && isPacked(format)
            && format.getSampleSizeInBits() == bits
            && (format.getSampleRate() == AudioSystem.NOT_SPECIFIED || Math.round(format.getSampleRate()) == rateHz)
            && (format.getChannels() == AudioSystem.NOT_SPECIFIED || format.getChannels() == channels);
    }

    /** 24 bits in four bytes are left out: 32 or 16 bits are offered beside them, and nobody agrees where they stand. */
    private static boolean isPacked(AudioFormat format) {
        return format.getFrameSize() == AudioSystem.NOT_SPECIFIED || format.getChannels() == AudioSystem.NOT_SPECIFIED
            || format.getFrameSize() * 8 == format.getChannels() * format.getSampleSizeInBits();
    }

    private static AudioFormat exact(AudioFormat offered, int rateHz, int channels) {
        return new AudioFormat(rateHz, offered.getSampleSizeInBits(), channels, true, offered.isBigEndian());
    }

    private static List<Integer> channelCounts(List<AudioFormat> offered, int channel) {
        TreeSet<Integer> counts = new TreeSet<>();
        for (AudioFormat format : offered) {
            int most = format.getChannels() == AudioSystem.NOT_SPECIFIED ? MOST_CHANNELS : format.getChannels();
            int least = format.getChannels() == AudioSystem.NOT_SPECIFIED ? 1 : format.getChannels();
            for (int count = Math.max(least, channel); count <= most; count++) {
                counts.add(count);
            }
        }
        List<Integer> order = new ArrayList<>(counts.stream().filter(c -> c % 2 == 0).toList());
        order.addAll(counts.stream().filter(c -> c % 2 == 1).toList());
        return order.subList(0, Math.min(CHANNEL_COUNTS_TRIED, order.size()));
    }
}
