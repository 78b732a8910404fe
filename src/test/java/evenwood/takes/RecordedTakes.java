package evenwood.takes;

import evenwood.Needs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;

/**
 * Short performances as they were recorded, from the sonic-pi-samples package: guitars with pickups, and hand drums.
 *
 * <p>Out: mono at 44.1 kHz, decoded by sox. Nobody wrote down what is in them; they serve as sound that no model made.
 */
public final class RecordedTakes {
    public static final int SAMPLE_RATE_HZ = 44_100;
    private static final Path FOLDER = Path.of("/usr/share/sonic-pi/samples");
    private static final Path CACHE = Path.of("target", "takes", "recorded");

    private RecordedTakes() { }

    public static List<String> names() {
        return List.of("guit_em9", "guit_e_fifths", "guit_e_slide", "guit_harmonics", "loop_tabla");
    }

    public static float[] samples(String name) {
        return TakeFile.readMono(path(name));
    }

    /** As a mono 24-bit WAV file. Do not change the file. */
    public static Path path(String name) {
        Path wav = CACHE.resolve(name + ".wav");
        if (Files.exists(wav)) {
            return wav;
        }
        Needs.program("sox");
        Needs.file(FOLDER.toString());
        try {
            Files.createDirectories(CACHE);
            Path part = Files.createTempFile(CACHE, "part", ".wav");
            Programs.run("decode recorded take with sox", null, "sox", FOLDER.resolve(name + ".flac").toString(), "-b", "24", "-t", "wavpcm", part.toString(), "remix", "-");
            return Files.move(part, wav, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
