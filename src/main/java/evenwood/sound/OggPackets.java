package evenwood.sound;

import com.jcraft.jogg.Packet;
import com.jcraft.jogg.Page;
import com.jcraft.jogg.StreamState;
import com.jcraft.jogg.SyncState;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/**
 * The packets of the first Vorbis stream in an Ogg file, one after the other.
 *
 * <p>Other streams beside it are passed over. Source: RFC 3533 (pages, checksums, stream numbers).
 * <p>Thread: one reader.
 */
final class OggPackets {
    private static final int READ_BYTES = 8192;
    /** A page carries up to 64 KiB; a real Vorbis packet needs two of them at most. */
    private static final int MOST_PAGES_WITHOUT_A_PACKET = 32;

    private final InputStream in;
    private final SyncState sync = new SyncState();
    private final StreamState stream = new StreamState();
    private final Page page = new Page();
    private final Packet packet = new Packet();
    private int streamNumber;
    private boolean lastPageSeen;

    /** Finds the Vorbis stream among those that begin at the start of the file. */
    OggPackets(FileBytes bytes) throws IOException {
        in = bytes.stream();
        sync.init();
        String firstKind = null;
        while (nextPage() && page.bos() != 0) {
            String kind = kind();
            firstKind = firstKind == null ? kind : firstKind;
            if (kind.equals("Vorbis")) {
                streamNumber = page.serialno();
                stream.init(streamNumber);
                stream.pagein(page);
                return;
            }
        }
        if (firstKind == null) {
            throw damaged(null);
        }
        throw new FileFault(SoundTrouble.FILE_CODING, "the Ogg file holds " + firstKind + ", but only Vorbis is read from an Ogg file", FileFault.CONVERT);
    }

    Packet packet() {
        return packet;
    }

    /** Steps to the next packet; false when the stream is over. Its last page is marked (RFC 3533, 6); without it the file was cut. */
    boolean next() throws IOException {
        for (int pages = 0; pages < MOST_PAGES_WITHOUT_A_PACKET; pages++) {
            int found = stream.packetout(packet);
            if (found == 1) {
                return true;
            }
            if (found < 0) {
                throw damaged(null);
            }
            if (lastPageSeen) {
                refuseASecondSound();
                return false;
            }
            if (!nextPageOfStream()) {
                throw new FileFault(SoundTrouble.FILE_CUT_SHORT, "the Ogg Vorbis file is cut short", FileFault.EXPORT_AGAIN);
            }
        }
        throw damaged(null);
    }

    private boolean nextPageOfStream() throws IOException {
        while (nextPage()) {
            if (page.serialno() == streamNumber) {
                stream.pagein(page);
                lastPageSeen = page.eos() != 0;
                return true;
            }
        }
        return false;
    }

    private boolean nextPage() throws IOException {
        int found = searchPage();
        if (found < 0) {
            throw damaged(null);
        }
        return found > 0;
    }

    /** 1 when the next page follows at once, −1 when something else does, 0 at the end of the file. */
    private int searchPage() throws IOException {
        int found = sync.pageout(page);
        while (found == 0) {
            int at = sync.buffer(READ_BYTES);
            int n = in.read(sync.data, at, READ_BYTES);
            if (n < 0) {
                return 0;
            }
            sync.wrote(n);
            found = sync.pageout(page);
        }
        return found;
    }

    /** Ogg files may be strung together; another performance behind this one must not be left out silently. */
    private void refuseASecondSound() throws IOException {
        if (searchPage() > 0 && page.bos() != 0) {
            throw new FileFault(SoundTrouble.FILE_CODING, "a second sound follows the first in the same Ogg file", "split it into single files");
        }
    }

    private String kind() {
        String start = new String(page.body_base, page.body, Math.min(8, page.body_len), StandardCharsets.ISO_8859_1);
        if (start.startsWith("\u0001vorbis")) {
            return "Vorbis";
        }
        return start.startsWith("Opus") ? "Opus sound" : start.startsWith("\u007fFLAC") ? "FLAC sound"
            : start.startsWith("Speex") ? "Speex sound" : start.startsWith("\u0080theora") ? "video" : "something unknown";
    }

    static FileFault damaged(Exception cause) {
        return new FileFault(SoundTrouble.FILE_BROKEN, "the Ogg Vorbis stream is damaged", FileFault.EXPORT_AGAIN, cause);
    }
}
