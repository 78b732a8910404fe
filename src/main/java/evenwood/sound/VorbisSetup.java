package evenwood.sound;

import com.jcraft.jogg.Buffer;
import com.jcraft.jogg.Packet;

/**
 * Looks through the setup of a Vorbis stream before the decoder does, which believes any size it claims: a few crafted
 * bytes could make it reserve gigabytes or search for ever.
 *
 * <p>How: walks the code books, floors, residues and mappings as the decoder will and keeps nothing. Source of the layout:
 * Vorbis I specification, 4.2.4, 6.2.1, 7.2.2 and 8.6.1.
 * <p>Limits: JOrbis counts one bit too few for the channel numbers of coupled channels unless the number of channels is
 * a power of two, so such files (low qualities of 3, 5, 6 or 7 channels) are refused with words.
 */
final class VorbisSetup {
    private static final int HEADER_BYTES = 7;
    /** Half the longest block of 8192 times the most channels there are. */
    private static final int MOST_RESIDUE_VALUES = 4096 * FrameShape.MOST_CHANNELS;
    /** Our choice: the reference encoder stays under a few thousand. */
    private static final int MOST_CLASS_WORDS = 1 << 16;

    private final Buffer bits = new Buffer();
    private int[] dimensionsOfBook;

    private final int channels;

    private VorbisSetup(Packet packet, int channels) {
        this.channels = channels;
        bits.readinit(packet.packet_base, packet.packet + HEADER_BYTES, Math.max(0, packet.bytes - HEADER_BYTES));
    }

    /** Refuses a third header packet that claims what one never meets, or what the decoder would get wrong. */
    static void check(Packet packet, int channels) throws FileFault {
        VorbisSetup setup = new VorbisSetup(packet, channels);
        setup.dimensionsOfBook = VorbisCodeBooks.dimensions(setup.bits);
        if (setup.dimensionsOfBook == null || !setup.floors() || !setup.residues()) {
            throw VorbisHeaders.broken();
        }
        if (Integer.bitCount(channels) != 1 && setup.channelsAreCoupled()) {
            throw new FileFault(SoundTrouble.FILE_CODING, "it is an Ogg Vorbis file with " + channels + " coupled channels, which are not read",
                FileFault.CONVERT);
        }
    }

    private boolean floors() {
        int unused = bits.read(6) + 1;
        for (int i = 0; i < unused; i++) {
            bits.read(16);
        }
        int floors = bits.read(6) + 1;
        for (int floor = 0; floor < floors; floor++) {
            int kind = bits.read(16);
            if (kind == 0) {
                oldFloor();
            } else if (kind != 1 || !floor()) {
                return false;
            }
        }
        return true;
    }

    private void oldFloor() {
        bits.read(8 + 16);
        bits.read(16 + 6);
        bits.read(8);
        int books = bits.read(4) + 1;
        for (int i = 0; i < books; i++) {
            bits.read(8);
        }
    }

    private boolean floor() {
        int[] classOfPartition = new int[Math.max(0, bits.read(5))];
        int classes = 0;
        for (int i = 0; i < classOfPartition.length; i++) {
            classOfPartition[i] = bits.read(4);
            classes = Math.max(classes, classOfPartition[i] + 1);
        }
        int[] dimensions = new int[classes];
        for (int i = 0; i < classes; i++) {
            dimensions[i] = floorClass();
        }
        bits.read(2);
        int width = bits.read(4);
        for (int partition : classOfPartition) {
            for (int i = 0; partition >= 0 && i < dimensions[partition]; i++) {
                bits.read(width);
            }
        }
        return width >= 0;
    }

    private int floorClass() {
        int dimensions = bits.read(3) + 1;
        int subclasses = bits.read(2);
        if (subclasses > 0) {
            bits.read(8);
        }
        for (int i = 0; i < 1 << Math.max(0, subclasses); i++) {
            bits.read(8);
        }
        return dimensions;
    }

    private boolean residues() {
        int residues = bits.read(6) + 1;
        for (int residue = 0; residue < residues; residue++) {
            bits.read(16);
            if (!residue()) {
                return false;
            }
        }
        return bits.look1() >= 0;
    }

    private boolean residue() {
        int begin = bits.read(24);
        int end = bits.read(24);
        int partitionLess1 = bits.read(24);
        int classes = bits.read(6) + 1;
        int book = bits.read(8);
        int books = 0;
        for (int i = 0; i < classes; i++) {
            books += Integer.bitCount(bits.read(3));
            books += bits.read(1) == 1 ? Integer.bitCount(bits.read(5)) : 0;
        }
        for (int i = 0; i < books; i++) {
            bits.read(8);
        }
        return begin >= 0 && begin <= end && end <= MOST_RESIDUE_VALUES && partitionLess1 >= 0
            && book >= 0 && book < dimensionsOfBook.length && Math.pow(classes, dimensionsOfBook[book]) <= MOST_CLASS_WORDS;
    }

    private boolean channelsAreCoupled() {
        boolean coupled = false;
        int mappings = bits.read(6) + 1;
        for (int mapping = 0; mapping < mappings; mapping++) {
            coupled |= mappingIsCoupled();
        }
        return coupled;
    }

    private boolean mappingIsCoupled() {
        bits.read(16);
        int submaps = bits.read(1) == 1 ? bits.read(4) + 1 : 1;
        int steps = bits.read(1) == 1 ? bits.read(8) + 1 : 0;
        int channelNumberBits = 32 - Integer.numberOfLeadingZeros(channels - 1);
        for (int i = 0; i < 2 * steps; i++) {
            bits.read(channelNumberBits);
        }
        bits.read(2);
        for (int i = 0; submaps > 1 && i < channels; i++) {
            bits.read(4);
        }
        for (int i = 0; i < submaps; i++) {
            bits.read(24);
        }
        return steps > 0;
    }
}
