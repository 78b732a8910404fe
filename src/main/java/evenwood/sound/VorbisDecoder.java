package evenwood.sound;

import com.jcraft.jogg.Packet;
import com.jcraft.jorbis.Block;
import com.jcraft.jorbis.DspState;
import java.io.IOException;
import java.util.OptionalLong;

/**
 * Reads Ogg Vorbis files with JOrbis.
 *
 * <p>Out: floats as decoded, also beyond full scale. How: the packets are taken from the one Vorbis stream of the file;
 * a page whose checksum is wrong, a missing page or a second stream behind the first ends the take with a fault.
 * <p>Thread: one reader.
 */
final class VorbisDecoder implements FrameDecoder {
    private final OggPackets packets;
    private final FrameShape shape;
    private final DspState synthesis = new DspState();
    private final Block block;
    private final float[][][] decoded = new float[1][][];
    private final int[] firstOfChannel;
    private boolean placeKnown;
    private long framesDelivered;
    private long lastFrame = Long.MAX_VALUE;

    /** Reads the headers; the library answers crafted ones with exceptions of any kind. */
    static VorbisDecoder open(FileBytes bytes) throws IOException {
        try {
            return new VorbisDecoder(bytes);
        } catch (RuntimeException e) {
            throw OggPackets.damaged(e);
        }
    }

    private VorbisDecoder(FileBytes bytes) throws IOException {
        packets = new OggPackets(bytes);
        VorbisHeaders headers = VorbisHeaders.read(packets);
        shape = new FrameShape(headers.info().rate, headers.info().channels, 0, OptionalLong.empty(), 0);
        firstOfChannel = new int[shape.channels()];
        synthesis.synthesis_init(headers.info());
        block = new Block(synthesis);
    }

    @Override
    public FrameShape shape() {
        return shape;
    }

    @Override
    public int decode(float[] interleaved, int offset, int mostFrames) throws IOException {
        try {
            int ready = ready();
            while (ready <= 0) {
                if (!packets.next()) {
                    return -1;
                }
                notePlace(packets.packet());
                if (block.synthesis(packets.packet()) == 0) {
                    synthesis.synthesis_blockin(block);
                }
                ready = ready();
            }
            int frames = Math.min(mostFrames, ready);
            copy(interleaved, offset, frames);
            synthesis.synthesis_read(frames);
            framesDelivered += frames;
            return frames;
        } catch (RuntimeException e) {
            throw OggPackets.damaged(e);
        }
    }

    private int ready() {
        return (int) Math.min(synthesis.synthesis_pcmout(decoded, firstOfChannel), lastFrame - framesDelivered);
    }

    /**
     * The last page of a stream says at which frame it ends, in the middle of a block. JOrbis cuts there, but not when
     * the first page with sound is also the last one.
     */
    private void notePlace(Packet packet) {
        if (packet.granulepos >= 0) {
            if (packet.e_o_s != 0 && !placeKnown) {
                lastFrame = packet.granulepos;
            }
            placeKnown = true;
        }
    }

    private void copy(float[] interleaved, int offset, int frames) {
        for (int channel = 0; channel < shape.channels(); channel++) {
            float[] from = decoded[0][channel];
            for (int i = 0, at = offset + channel; i < frames; i++, at += shape.channels()) {
                interleaved[at] = from[firstOfChannel[channel] + i];
            }
        }
    }
}
