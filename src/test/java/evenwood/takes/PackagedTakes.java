package evenwood.takes;

import evenwood.Needs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
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
 * <p>Out: mono, 24-bit values. Renderer: fluidsynth (Debian package of that name), {@link PatchPlayer} for freepats.
 */
public final class PackagedTakes {
    private static final Path CACHE = Path.of("target", "takes");
    /** Patches whose recordings are clean; the harp and the cello of freepats were themselves clipped when recorded. */
    private static final List<PlayedInstrument> CLEAN_PATCHES = List.of(PlayedInstrument.STEEL_STRING_GUITAR, PlayedInstrument.NYLON_STRING_GUITAR,
        PlayedInstrument.HAMMERED_DULCIMER, PlayedInstrument.SITAR, PlayedInstrument.VIOLIN, PlayedInstrument.DOUBLE_BASS_PLUCKED, PlayedInstrument.VIOLIN_PLUCKED);
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
        for (PlayedInstrument instrument : CLEAN_PATCHES) {
            int program = instrument.voices().get(0).program();
            takes.add(Take.soundcheck(instrument, new PlayedInstrument.Voice(SampledBank.FREEPATS, 0, program), takes.size() + 1));
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
        SampledBank bank = take.voice().bank();
        Path path = CACHE.resolve("raw").resolve(hash(score) + "-" + bank.name().toLowerCase(Locale.ROOT)
            + (bank == SampledBank.FREEPATS ? "-eased-" : "-") + take.sampleRateHz() + ".wav");
        if (Files.exists(path)) {
            return path;
        }
        if (bank != SampledBank.RECORDED_NOTES) {
            Needs.file(bank.file().toString());
        }
        try {
            Files.createDirectories(path.getParent());
            int frames = (int) Math.round(lengthSeconds * take.sampleRateHz());
            float[] mono = bank == SampledBank.FREEPATS || bank == SampledBank.RECORDED_NOTES ? fromPatch(take, notes, lengthSeconds)
                : Arrays.copyOf(fromSoundFont(take, score, path.getParent()), frames);
            return TakeFile.writeFloat(path, mono, take.sampleRateHz());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static float[] fromSoundFont(Take take, byte[] score, Path folder) throws IOException {
        Needs.program("fluidsynth");
        Path midi = Files.createTempFile(folder, "score", ".mid");
        Path stereo = Files.createTempFile(folder, "stereo", ".wav");
        try {
            Files.write(midi, score);
            Programs.run("render take with fluidsynth", midi, "fluidsynth", "-ni", "-R", "0", "-C", "0", "-g", Double.toString(RENDER_GAIN),
                "-r", Integer.toString(take.sampleRateHz()), "-O", "float", "-T", "wav", "-o", "synth.dynamic-sample-loading=1",
                "-o", "synth.midi-bank-select=gs", "-F", stereo.toString(), take.voice().bank().file().toString(), midi.toString());
            return TakeFile.readMono(stereo);
        } finally {
            Files.deleteIfExists(midi);
            Files.deleteIfExists(stereo);
        }
    }

    private static float[] fromPatch(Take take, List<PlayedNote> notes, double lengthSeconds) throws IOException {
        boolean plucked = take.instrument().playing() == PlayedInstrument.Playing.PLUCKED;
        if (take.voice().bank() == SampledBank.RECORDED_NOTES) {
            return new PatchPlayer(NotePackages.patch(take.voice().program()), plucked, take.sampleRateHz()).play(notes, lengthSeconds);
        }
        String number = String.format(Locale.ROOT, "%03d_*.pat", take.voice().program());
        try (DirectoryStream<Path> patches = Files.newDirectoryStream(take.voice().bank().file(), number)) {
            GusPatch patch = GusPatch.read(patches.iterator().next());
            return new PatchPlayer(patch, plucked, take.sampleRateHz()).play(notes, lengthSeconds);
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
