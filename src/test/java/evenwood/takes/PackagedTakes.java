package evenwood.takes;

import evenwood.Needs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;

/**
 * Takes on real instruments, rendered from packaged sample banks with reverb and chorus off, and kept under
 * {@code target/takes} so that they are rendered once.
 *
 * <p>Out: mono, 24-bit values. Renderer: fluidsynth (Debian package of that name).
 */
public final class PackagedTakes {
    private static final Path CACHE = Path.of("target", "takes");
    private static final double RENDER_GAIN = 0.4;
    private static final double HIGHEST_CODE = 1 - Math.pow(2, -23);

    private PackagedTakes() { }

    /** Soundcheck takes of every instrument on every voice that stands for it. */
    public static List<Take> catalogue() {
        List<Take> takes = new ArrayList<>();
        for (PlayedInstrument instrument : PlayedInstrument.values()) {
            for (PlayedInstrument.Voice voice : instrument.voices()) {
                takes.add(Take.soundcheck(instrument, voice, takes.size() + 1));
            }
        }
        return List.copyOf(takes);
    }

    /** One take an instrument, each on the first voice that stands for it. */
    public static List<Take> oneEach() {
        List<Take> takes = new ArrayList<>();
        for (PlayedInstrument instrument : PlayedInstrument.values()) {
            takes.add(of(instrument));
        }
        return List.copyOf(takes);
    }

    /** The catalogue's first take on an instrument. */
    public static Take of(PlayedInstrument instrument) {
        return catalogue().stream().filter(take -> take.instrument() == instrument).findFirst().orElseThrow();
    }

    /** What is played in it, in the order of writing. */
    public static List<PlayedNote> notes(Take take) {
        return Phrases.of(take);
    }

    /** The take as a mono 24-bit WAV file; exactly the values of {@link #samples}. Do not change the file. */
    public static Path take(Take take) {
        float[] samples = samples(take);
        String recipe = rendered(take).getFileName() + " " + take.peakDbfs() + " " + take.roomDbfs() + " " + take.roomSeed();
        Path path = CACHE.resolve(take.instrument().id() + "-" + hash(recipe.getBytes(StandardCharsets.UTF_8)) + ".wav");
        return Files.exists(path) ? path : TakeFile.writePcm(path, samples, take.sampleRateHz(), 24);
    }

    /** The take, peak-normalised, with its room noise if it has any, rounded to 24 bits. A fresh array. */
    public static float[] samples(Take take) {
        float[] samples = withPeak(TakeFile.readMono(rendered(take)), take.peakDbfs());
        if (take.roomDbfs() != Double.NEGATIVE_INFINITY) {
            RoomNoise.add(samples, take.sampleRateHz(), take.roomDbfs(), take.roomSeed());
        }
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) Math.max(-1, Math.min(HIGHEST_CODE, Math.round(samples[i] * 8_388_608.0) / 8_388_608.0));
        }
        return samples;
    }

    /** Scales in place to a wanted sample peak and gives the same array back. */
    public static float[] withPeak(float[] samples, double peakDbfs) {
        double peak = 0;
        for (float sample : samples) {
            peak = Math.max(peak, Math.abs(sample));
        }
        if (peak > 0) {
            double gain = Math.pow(10, peakDbfs / 20) / peak;
            for (int i = 0; i < samples.length; i++) {
                samples[i] = (float) (samples[i] * gain);
            }
        }
        return samples;
    }

    /** The renderer's own output as mono float, cached by what went into it. */
    private static Path rendered(Take take) {
        List<PlayedNote> notes = Phrases.of(take);
        double lengthSeconds = Phrases.lengthSeconds(notes);
        byte[] score = MidiScore.of(notes, take.voice(), lengthSeconds);
        Path bank = take.voice().bank().file();
        Path path = CACHE.resolve("raw").resolve(hash(score) + "-" + take.voice().bank().name().toLowerCase(Locale.ROOT) + "-" + take.sampleRateHz() + ".wav");
        if (Files.exists(path)) {
            return path;
        }
        Needs.program("fluidsynth");
        Needs.file(bank.toString());
        try {
            Files.createDirectories(path.getParent());
            Path midi = Files.createTempFile(path.getParent(), "score", ".mid");
            Path stereo = Files.createTempFile(path.getParent(), "stereo", ".wav");
            Files.write(midi, score);
            render(bank, midi, stereo, take.sampleRateHz());
            float[] mono = Arrays.copyOf(TakeFile.readMono(stereo), (int) Math.round(lengthSeconds * take.sampleRateHz()));
            Path part = TakeFile.writeFloat(path.resolveSibling(midi.getFileName() + ".wav"), mono, take.sampleRateHz());
            Files.move(part, path, StandardCopyOption.REPLACE_EXISTING);
            Files.delete(midi);
            Files.delete(stereo);
            return path;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void render(Path bank, Path midi, Path out, int sampleRateHz) throws IOException {
        Process process = new ProcessBuilder("fluidsynth", "-ni", "-R", "0", "-C", "0", "-g", Double.toString(RENDER_GAIN),
            "-r", Integer.toString(sampleRateHz), "-O", "float", "-T", "wav", "-o", "synth.dynamic-sample-loading=1",
            "-o", "synth.midi-bank-select=gs", "-F", out.toString(), bank.toString(), midi.toString())
            .redirectErrorStream(true).redirectInput(ProcessBuilder.Redirect.from(midi.toFile())).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        try {
            if (process.waitFor() != 0) {
                throw new IllegalStateException("render take with fluidsynth: exit " + process.exitValue() + ": " + said);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("render take with fluidsynth: interrupted", e);
        }
    }

    private static String hash(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes), 0, 10);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
