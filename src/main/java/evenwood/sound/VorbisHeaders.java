package evenwood.sound;

import com.jcraft.jogg.Packet;
import com.jcraft.jorbis.Comment;
import com.jcraft.jorbis.Info;
import java.io.IOException;

/**
 * The three packets a Vorbis stream begins with: description, tags and code books.
 *
 * <p>The tags are replaced by empty ones before the decoder sees them, because it would believe any length they claim
 * and reserve the memory; the setup is looked through for the same reason ({@link VorbisSetup}). Source of the
 * layout: Vorbis I specification, 4.2 and 5.2.1.
 */
record VorbisHeaders(Info info) {
    private static final byte[] NO_TAGS = {3, 'v', 'o', 'r', 'b', 'i', 's', 0, 0, 0, 0, 0, 0, 0, 0, 1};

    static VorbisHeaders read(OggPackets packets) throws IOException {
        Info info = new Info();
        info.init();
        Comment tags = new Comment();
        tags.init();
        next(packets);
        hear(info, tags, packets.packet());
        FrameShape.check(info.rate, info.channels);
        next(packets);
        hear(info, tags, noTags());
        next(packets);
        VorbisSetup.check(packets.packet(), info.channels);
        hear(info, tags, packets.packet());
        return new VorbisHeaders(info);
    }

    private static void next(OggPackets packets) throws IOException {
        if (!packets.next()) {
            throw new FileFault(SoundTrouble.FILE_CUT_SHORT, "the file ends in the middle of its header", FileFault.EXPORT_AGAIN);
        }
    }

    private static void hear(Info info, Comment tags, Packet packet) throws FileFault {
        if (info.synthesis_headerin(tags, packet) != 0) {
            throw broken();
        }
    }

    static FileFault broken() {
        return new FileFault(SoundTrouble.FILE_BROKEN, "its Vorbis header is broken", FileFault.EXPORT_AGAIN);
    }

    private static Packet noTags() {
        Packet packet = new Packet();
        packet.packet_base = NO_TAGS.clone();
        packet.packet = 0;
        packet.bytes = NO_TAGS.length;
        packet.packetno = 1;
        return packet;
    }
}
