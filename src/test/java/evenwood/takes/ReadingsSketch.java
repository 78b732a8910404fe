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
import evenwood.measure.NotesReading;
import evenwood.measure.NowReading;
import evenwood.measure.PitchReading;
import evenwood.measure.Ring;
import evenwood.measure.RingingReading;
import evenwood.measure.TakeInfo;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.measure.Tone;
import evenwood.measure.TruePeakReading;
import evenwood.sound.SoundFormat;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Readings of an imagined take, for tests of what is made of readings: a minute with good level and no noise, on which a
 * test changes what it is about.
 */
public final class ReadingsSketch {
    private static final HopGrid GRID = new HopGrid(48_000);

    private double truePeakDbtp = -9;
    private double playingDbfs = -24;
    private double playingSeconds = 50;
    private double quietSeconds = 8;
    private DynamicsReading dynamics = new DynamicsReading(-30, -20, -10, 80);
    private NoiseReading noise = NoiseReading.NOTHING;
    private int clicks;
    private List<Double> clickSeconds = List.of();
    private List<Note> notes = List.of();
    private int dropouts;
    private List<Ring> rings = List.of();
    private DistortionReading distortion = clean();

    public ReadingsSketch truePeakDbtp(double value) {
        truePeakDbtp = value;
        return this;
    }

    public ReadingsSketch playing(double seconds, double dbfs) {
        playingSeconds = seconds;
        playingDbfs = dbfs;
        return this;
    }

    public ReadingsSketch quietSeconds(double value) {
        quietSeconds = value;
        return this;
    }

    public ReadingsSketch dynamics(double softDbfs, double usualDbfs, double hardDbfs, int notes) {
        dynamics = new DynamicsReading(softDbfs, usualDbfs, hardDbfs, notes);
        return this;
    }

    public ReadingsSketch noise(double floorDbfs, double humDbfs, double buzzDbfs, double hissDbfs, Tone... tones) {
        boolean mains = Double.isFinite(humDbfs) || Double.isFinite(buzzDbfs);
        noise = new NoiseReading(floorDbfs, floorDbfs, mains ? OptionalDouble.of(50.02) : OptionalDouble.empty(), mains ? 0.01 : 0,
            humDbfs, buzzDbfs, hissDbfs, List.of(tones), quietSeconds, NoiseReading.Method.QUIET_PARTS);
        return this;
    }

    public ReadingsSketch clicks(int count) {
        clicks = count;
        return this;
    }

    public ReadingsSketch clicksAt(double... seconds) {
        clicks = seconds.length;
        clickSeconds = Arrays.stream(seconds).boxed().toList();
        return this;
    }

    public ReadingsSketch rings(Ring... howls) {
        rings = List.of(howls);
        return this;
    }

    public ReadingsSketch notesAt(double... seconds) {
        notes = Arrays.stream(seconds).mapToObj(start -> new Note(start, start + 0.4, 220, 57, 0.95, false, -20, -25)).toList();
        return this;
    }

    public ReadingsSketch notes(List<Note> played) {
        notes = List.copyOf(played);
        return this;
    }

    public ReadingsSketch dropouts(int count) {
        dropouts = count;
        return this;
    }

    public ReadingsSketch distortion(DistortionReading.Verdict verdict, DistortionReading.Stage stage, OptionalDouble onsetDbfs,
                                     long clippedSamples, double probability) {
        distortion = new DistortionReading(verdict, stage, onsetDbfs,
            onsetDbfs.isPresent() ? OptionalDouble.of(0.5) : OptionalDouble.empty(), clippedSamples, probability,
            DistortionReading.SILENCE.evidence());
        return this;
    }

    public TakeReadings readings() {
        double seconds = playingSeconds + quietSeconds;
        return new TakeReadings(new TakeInfo("sketch", SoundFormat.mono(GRID.sampleRateHz()), seconds),
            new NowReading(truePeakDbtp, playingDbfs, PitchReading.NONE),
            new LevelReading(truePeakDbtp, truePeakDbtp - 15, 0, Math.round(seconds * GRID.sampleRateHz())),
            new TruePeakReading(truePeakDbtp), LoudnessReading.SILENCE, activity(), new NotesReading(notes), NoteSpectraReading.NONE, dynamics,
            spectrum(), noise, clickReading(), dropoutReading(), distortion, new RingingReading(rings));
    }

    private ActivityReading activity() {
        byte[] states = new byte[GRID.hopsIn(playingSeconds) + GRID.hopsIn(quietSeconds)];
        Arrays.fill(states, 0, GRID.hopsIn(playingSeconds), ActivityReading.PLAYING);
        Arrays.fill(states, GRID.hopsIn(playingSeconds), states.length, ActivityReading.QUIET);
        return new ActivityReading(GRID, 0, states, noise.floorDbfs());
    }

    private LongTermSpectrumReading spectrum() {
        double inBand = playingDbfs - 10 * Math.log10(ThirdOctave.FROM_50_HZ_TO_16_KHZ.size());
        List<BandLevel> bands = ThirdOctave.FROM_50_HZ_TO_16_KHZ.stream()
            .map(band -> new BandLevel(band, inBand, playingSeconds > 0 ? inBand - playingDbfs : Double.NEGATIVE_INFINITY, 1, 1, 40)).toList();
        return new LongTermSpectrumReading(bands, playingSeconds > 0 ? playingDbfs : Double.NEGATIVE_INFINITY, playingSeconds, 25, true);
    }

    private static DistortionReading clean() {
        return new DistortionReading(DistortionReading.Verdict.CLEAN, DistortionReading.Stage.NONE, OptionalDouble.empty(),
            OptionalDouble.empty(), 0, 0.02, DistortionReading.SILENCE.evidence());
    }

    private ClickReading clickReading() {
        return new ClickReading(clicks, clickSeconds);
    }

    private DropoutReading dropoutReading() {
        return new DropoutReading(dropouts, List.of());
    }
}
