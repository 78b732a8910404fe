package evenwood.takes;

import evenwood.measure.ActivityReading;
import evenwood.measure.BandLevel;
import evenwood.measure.ClickReading;
import evenwood.measure.DistortionReading;
import evenwood.measure.DropoutReading;
import evenwood.measure.DynamicsReading;
import evenwood.measure.HopGrid;
import evenwood.measure.LevelReading;
import evenwood.measure.LongTermSpectrumReading;
import evenwood.measure.LoudnessReading;
import evenwood.measure.NoiseReading;
import evenwood.measure.Note;
import evenwood.measure.NoteSpectraReading;
import evenwood.measure.NoteSpectrum;
import evenwood.measure.NotesReading;
import evenwood.measure.NowReading;
import evenwood.measure.PitchReading;
import evenwood.measure.RingingReading;
import evenwood.measure.TakeInfo;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.measure.TruePeakReading;
import evenwood.sound.SoundFormat;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/**
 * What {@link HeardTone} reads of packaged takes, kept under {@code target/takes/tone} so that a take is heard once and an
 * evaluation can be run again in seconds.
 *
 * <p>A kept reading counts as long as neither the take's recipe nor any class of {@code evenwood.measure} changed: both are in
 * the file's name.
 */
public final class KeptTone {
    private static final Path FOLDER = Path.of("target", "takes", "tone");
    private static final Path METERS = Path.of("target", "classes", "evenwood", "measure");
    private static final List<ThirdOctave> BANDS = ThirdOctave.FROM_50_HZ_TO_16_KHZ;
    private static final String METERS_DIGEST = metersDigest();

    /** Of the files; to be changed with what {@link #write} writes. */
    private static final String LAYOUT = "with dynamics";

    private KeptTone() { }

    public static TakeReadings readings(Take take) {
        Path file = FOLDER.resolve(hash(METERS_DIGEST + LAYOUT, take.id() + take.kinds() + take.dynamics() + take.sampleRateHz() + take.peakDbfs() + take.roomDbfs() + take.roomSeed()) + ".bin");
        SoundFormat format = new SoundFormat(take.sampleRateHz(), 1, 1, 24);
        try {
            if (Files.exists(file)) {
                try (DataInputStream in = new DataInputStream(new BufferedInputStream(Files.newInputStream(file)))) {
                    return read(in, format);
                }
            }
            TakeReadings readings = HeardTone.readings(PackagedTakes.samples(take), format);
            Files.createDirectories(FOLDER);
            Path half = Files.createTempFile(FOLDER, "half", ".bin");
            try (DataOutputStream out = new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(half)))) {
                write(out, readings);
            }
            Files.move(half, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            return readings;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static void write(DataOutputStream out, TakeReadings readings) throws IOException {
        out.writeDouble(readings.take().durationSeconds());
        out.writeInt(readings.activity().states().length);
        out.write(readings.activity().states());
        out.writeLong(readings.activity().firstHop());
        out.writeDouble(readings.activity().floorDbfs());
        out.writeInt(readings.notes().notes().size());
        for (Note note : readings.notes().notes()) {
            doubles(out, note.startSeconds(), note.endSeconds(), note.frequencyHz(), note.clarity(), note.peakDbfs(), note.levelDbfs());
            out.writeInt(note.midi());
            out.writeBoolean(note.polyphonic());
        }
        doubles(out, readings.dynamics().softDbfs(), readings.dynamics().usualDbfs(), readings.dynamics().hardDbfs());
        out.writeInt(readings.noteSpectra().spectra().size());
        for (NoteSpectrum spectrum : readings.noteSpectra().spectra()) {
            doubles(out, spectrum.pitchNumber(), spectrum.levelDbfs());
            out.writeInt(spectrum.part());
            doubles(out, spectrum.partialDb());
            for (int partials : spectrum.partials()) {
                out.writeInt(partials);
            }
        }
        LongTermSpectrumReading spectrum = readings.spectrum();
        doubles(out, spectrum.overallDbfs(), spectrum.playingSeconds());
        out.writeInt(spectrum.blocks());
        out.writeBoolean(spectrum.noiseKnown());
        out.writeInt(spectrum.bands().size());
        for (BandLevel level : spectrum.bands()) {
            doubles(out, level.levelDbfs(), level.relativeDb(), level.halfWidthDb(), level.relativeHalfWidthDb(), level.signalToNoiseDb());
        }
    }

    static TakeReadings read(DataInputStream in, SoundFormat format) throws IOException {
        TakeInfo info = new TakeInfo("take", format, in.readDouble());
        byte[] states = new byte[in.readInt()];
        in.readFully(states);
        ActivityReading activity = new ActivityReading(new HopGrid(format.sampleRateHz()), in.readLong(), states, in.readDouble());
        List<Note> notes = new ArrayList<>();
        for (int left = in.readInt(); left > 0; left--) {
            double[] figures = doubles(in, 6);
            notes.add(new Note(figures[0], figures[1], figures[2], in.readInt(), figures[3], in.readBoolean(), figures[4], figures[5]));
        }
        double[] dynamics = doubles(in, 3);
        List<NoteSpectrum> spectra = new ArrayList<>();
        for (int left = in.readInt(); left > 0; left--) {
            double[] figures = doubles(in, 2);
            int part = in.readInt();
            double[] partialDb = doubles(in, BANDS.size());
            int[] partials = new int[BANDS.size()];
            for (int band = 0; band < partials.length; band++) {
                partials[band] = in.readInt();
            }
            spectra.add(new NoteSpectrum(figures[0], part, figures[1], partialDb, partials));
        }
        NotesReading played = new NotesReading(notes);
        return new TakeReadings(info, new NowReading(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, PitchReading.NONE), LevelReading.SILENCE,
            TruePeakReading.SILENCE, LoudnessReading.SILENCE, activity, played, new NoteSpectraReading(spectra), new DynamicsReading(dynamics[0], dynamics[1], dynamics[2], notes.size()), spectrum(in),
            NoiseReading.NOTHING, ClickReading.NONE, DropoutReading.NONE, DistortionReading.SILENCE, RingingReading.NONE);
    }

    private static LongTermSpectrumReading spectrum(DataInputStream in) throws IOException {
        double[] whole = doubles(in, 2);
        int blocks = in.readInt();
        boolean noiseKnown = in.readBoolean();
        List<BandLevel> bands = new ArrayList<>();
        int count = in.readInt();
        for (int band = 0; band < count; band++) {
            double[] figures = doubles(in, 5);
            bands.add(new BandLevel(BANDS.get(band), figures[0], figures[1], figures[2], figures[3], figures[4]));
        }
        return new LongTermSpectrumReading(bands, whole[0], whole[1], blocks, noiseKnown);
    }

    private static void doubles(DataOutputStream out, double... values) throws IOException {
        for (double value : values) {
            out.writeDouble(value);
        }
    }

    private static double[] doubles(DataInputStream in, int count) throws IOException {
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            values[i] = in.readDouble();
        }
        return values;
    }

    private static String metersDigest() {
        try (Stream<Path> files = Files.list(METERS)) {
            StringBuilder all = new StringBuilder();
            for (Path file : files.sorted().toList()) {
                all.append(file.getFileName()).append(HexFormat.of().formatHex(sha256(Files.readAllBytes(file))));
            }
            return all.toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String hash(String meters, String recipe) {
        return HexFormat.of().formatHex(sha256((meters + recipe).getBytes(java.nio.charset.StandardCharsets.UTF_8)), 0, 10);
    }

    private static byte[] sha256(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
