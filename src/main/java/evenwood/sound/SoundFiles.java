package evenwood.sound;

import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Opens sound files of any kind that is read.
 *
 * <p>The kind is told from the content; the name's ending only helps the words when the content is unknown.
 */
public final class SoundFiles {
    private SoundFiles() { }

    /**
     * Opens a file at its first frame.
     *
     * @param channel which channel to hear, counted from 1; 0 leaves the choice, which is the first
     * @throws SoundProblem if there is no such file, it holds no sound, or its kind is not read
     */
    public static SoundFile open(Path path, int channel) {
        String name = oneLine(path);
        refuseWhatIsNoFile(path, name);
        try {
            return opened(path, name, channel);
        } catch (FileFault fault) {
            throw problem(fault.trouble(), name, fault.getMessage(), fault.advice(), fault);
        } catch (EOFException e) {
            throw problem(SoundTrouble.FILE_CUT_SHORT, name, "the file ends in the middle of its header", FileFault.EXPORT_AGAIN, e);
        } catch (IOException e) {
            throw problem(SoundTrouble.FILE_UNREADABLE, name, "it cannot be read (" + e.getMessage() + ")", "check the disk or copy the file again", e);
        }
    }

    private static SoundFile opened(Path path, String name, int channel) throws IOException {
        FileBytes bytes = new FileBytes(path);
        try {
            return withChannel(name, bytes, FileKind.decoder(bytes, name), channel);
        } catch (IOException | RuntimeException e) {
            bytes.close();
            throw e;
        }
    }

    private static void refuseWhatIsNoFile(Path path, String name) {
        if (!Files.exists(path)) {
            throw problem(SoundTrouble.FILE_MISSING, name, "there is no such file", "check the path", null);
        }
        if (Files.isDirectory(path)) {
            throw problem(SoundTrouble.FILE_FOLDER, name, "it is a folder", "name one sound file in it", null);
        }
        if (!Files.isRegularFile(path)) {
            throw problem(SoundTrouble.FILE_NOT_PLAIN, name, "it is no plain file (a pipe or device)", "save the sound to a file first", null);
        }
        if (!Files.isReadable(path)) {
            throw problem(SoundTrouble.FILE_FORBIDDEN, name, "it may not be read (no permission)", "change its permissions or copy it", null);
        }
    }

    private static SoundFile withChannel(String name, FileBytes bytes, FrameDecoder decoder, int channel) throws FileFault {
        int channels = decoder.shape().channels();
        if (channel < 0 || channel > channels) {
            throw new FileFault(SoundTrouble.FILE_CHANNEL, "channel=" + channel + " was asked for, but the file has "
                + (channels == 1 ? "one channel" : "channels 1 to " + channels), "choose one of them with --channel");
        }
        return new SoundFile(name, bytes, decoder, Math.max(1, channel));
    }

    private static SoundProblem problem(SoundTrouble trouble, String name, String what, String advice, Throwable cause) {
        return SoundProblem.atStart("open " + name + ": " + what + "; " + advice, cause).of(trouble, name);
    }

    private static String oneLine(Path path) {
        return path.toString().replaceAll("\\p{Cntrl}", "?");
    }
}
