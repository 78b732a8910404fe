package evenwood.sound;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Names the kinds of file that are not read, so that the player hears what the file is and not only what it is not.
 *
 * <p>The marks are those of common file-type tables (common practice).
 */
final class ForeignKind {
    private static final String READ_KINDS = "WAV, AIFF, FLAC, OGG Vorbis and MP3 are read";
    private static final Map<String, String> NO_SOUND = new LinkedHashMap<>();
    private static final Map<String, String> OTHER_SOUND = new LinkedHashMap<>();

    static {
        NO_SOUND.put("\u0089PNG", "a PNG picture");
        NO_SOUND.put("\u00ff\u00d8\u00ff", "a JPEG picture");
        NO_SOUND.put("GIF8", "a GIF picture");
        NO_SOUND.put("%PDF", "a PDF document");
        NO_SOUND.put("PK\u0003\u0004", "a ZIP archive");
        NO_SOUND.put("\u001f\u008b", "a gzip archive");
        NO_SOUND.put("Rar!", "a RAR archive");
        NO_SOUND.put("7z\u00bc\u00af", "a 7-Zip archive");
        NO_SOUND.put("\u007fELF", "a program");
        NO_SOUND.put("MThd", "a MIDI file, which holds notes");
        OTHER_SOUND.put("RIFX", "a big-endian WAV file (RIFX)");
        OTHER_SOUND.put("riff", "a Wave64 file");
        OTHER_SOUND.put("caff", "a CAF file");
        OTHER_SOUND.put(".snd", "an AU file");
        OTHER_SOUND.put("wvpk", "a WavPack file");
        OTHER_SOUND.put("MAC ", "an APE file");
        OTHER_SOUND.put("#!AMR", "an AMR file");
        OTHER_SOUND.put("\u0030\u0026\u00b2\u0075", "a Windows Media file");
        OTHER_SOUND.put("\u001a\u0045\u00df\u00a3", "a Matroska or WebM file");
        OTHER_SOUND.put("\u00ff\u00f1", "an AAC file");
        OTHER_SOUND.put("\u00ff\u00f9", "an AAC file");
    }

    private ForeignKind() { }

    /** What a file that begins so is, or null when its mark is not known here. */
    static FileFault fault(String start) {
        for (Map.Entry<String, String> kind : NO_SOUND.entrySet()) {
            if (start.startsWith(kind.getKey())) {
                return new FileFault(SoundTrouble.FILE_FOREIGN, "it is " + kind.getValue() + ", not a sound file", READ_KINDS);
            }
        }
        for (Map.Entry<String, String> kind : OTHER_SOUND.entrySet()) {
            if (start.startsWith(kind.getKey())) {
                return unreadSound(kind.getValue());
            }
        }
        if (start.startsWith("ftyp", 4)) {
            return unreadSound("an MP4 or M4A file");
        }
        if (start.startsWith("RIFF") || start.startsWith("FORM")) {
            return new FileFault(SoundTrouble.FILE_FOREIGN, "it is a " + start.substring(0, 4) + " file of the kind \""
                + start.substring(8).replaceAll("[^ -~]", "?") + "\", not a sound file", READ_KINDS);
        }
        return null;
    }

    private static FileFault unreadSound(String kind) {
        return new FileFault(SoundTrouble.FILE_CODING, "it is " + kind + ", which is not read", FileFault.CONVERT);
    }

    /** The last resort, with what can still be said of the content and the name. */
    static FileFault unknown(String start, String ending) {
        if (start.chars().allMatch(ForeignKind::isTextLetter)) {
            return new FileFault(SoundTrouble.FILE_FOREIGN, "it is a text file, not a sound file", READ_KINDS);
        }
        if (start.chars().allMatch(letter -> letter == 0)) {
            return new FileFault(SoundTrouble.FILE_FOREIGN, "it begins with nothing but zero bytes, so it is no sound file", READ_KINDS);
        }
        boolean claims = ending.matches("wav|wave|aiff?|aifc|flac|ogg|oga|mp[123]|mpga");
        return new FileFault(SoundTrouble.FILE_FOREIGN, "its content is no sound of a known kind"
            + (claims ? ", although its name ends in ." + ending : ""), READ_KINDS);
    }

    /** Printable ASCII, tabs and line ends; more would take one binary file in five for text. */
    private static boolean isTextLetter(int letter) {
        return letter >= ' ' && letter <= '~' || letter == '\t' || letter == '\n' || letter == '\r';
    }
}
