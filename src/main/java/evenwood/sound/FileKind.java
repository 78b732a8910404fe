package evenwood.sound;

import java.io.EOFException;
import java.io.IOException;
import java.util.Locale;

/**
 * Tells what kind of file this is by its first bytes, and opens the decoder for it.
 *
 * <p>The name's ending decides only where the content leaves a choice: an MP3 file may begin with junk.
 */
final class FileKind {
    private static final int MARK_BYTES = 12;

    private FileKind() { }

    static FrameDecoder decoder(FileBytes bytes, String name) throws IOException {
        if (bytes.length() == 0) {
            throw new FileFault(SoundTrouble.FILE_EMPTY, "the file is empty (0 bytes)", FileFault.EXPORT_AGAIN);
        }
        boolean tagged = Mp3Frames.skipTag(bytes);
        String start = bytes.peek(MARK_BYTES);
        if (start.matches("(?s)(RIFF|RF64|BW64)....WAVE")) {
            bytes.seek(bytes.position() + MARK_BYTES);
            return PcmDecoder.of(bytes, WavHeader.read(bytes));
        }
        if (start.matches("(?s)FORM....AIF[FC]")) {
            bytes.seek(bytes.position() + MARK_BYTES);
            return PcmDecoder.of(bytes, AiffHeader.read(bytes, start.endsWith("C")));
        }
        if (start.startsWith("fLaC")) {
            bytes.seek(bytes.position() + 4);
            return new FlacDecoder(bytes);
        }
        if (start.startsWith("OggS")) {
            return VorbisDecoder.open(bytes);
        }
        if (start.matches("RIFF|RF64|BW64|FORM|(?s)(RIFF|RF64|BW64|FORM).{1,7}")) {
            throw new EOFException();
        }
        return mp3(bytes, start, name, tagged);
    }

    private static FrameDecoder mp3(FileBytes bytes, String start, String name, boolean tagged) throws IOException {
        FileFault foreign = ForeignKind.fault(start);
        if (foreign != null) {
            throw foreign;
        }
        String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        boolean mayBeMp3 = tagged || ending.matches("mp[123]|mpga") || start.startsWith("\u00ff");
        Mp3Frames frames = mayBeMp3 ? Mp3Frames.find(bytes) : null;
        if (frames == null) {
            throw ForeignKind.unknown(start, ending);
        }
        return new Mp3Decoder(frames);
    }
}
