package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.eq.EqualisedTake;
import evenwood.rig.ControlSet;
import evenwood.rig.LearnedControl;
import evenwood.rig.LearnedFile;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundFiles;
import evenwood.sound.SoundSource;
import evenwood.takes.TakeFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RenderCommandTest {
    private static final int RATE_HZ = 48_000;

    @TempDir
    Path folder;

    @Test
    void theMovesOfAFileAreAppliedExactly() throws IOException {
        Path take = noise(0.1);
        Path out = folder.resolve("out.wav");
        Spoken spoken = Spoken.by("render", take.toString(), "--moves", moves("""
            [{"kind": "peak", "frequencyHz": 420, "q": 1.4, "changeDb": -9}, {"kind": "gain", "changeDb": 3}]"""), "-o", out.toString());
        assertThat(spoken.err()).isEmpty();
        assertThat(spoken.exitCode()).isZero();
        EqChain chain = new EqChain(3, List.of(EqFilter.peak(420, 1.4, -9)));
        float[] before = samples(take);
        new evenwood.eq.EqProcessor(chain, RATE_HZ).process(before, before.length);
        float[] after = samples(out);
        assertThat(after).hasSameSizeAs(before);
        for (int i = 0; i < after.length; i++) {
            assertThat(after[i]).isCloseTo(before[i], within(3f / (1 << 23))); // dither and rounding of 24 bits
        }
    }

    @Test
    void matchedVersionsAreEquallyLoud() throws IOException {
        Path out = folder.resolve("out.wav");
        Spoken spoken = Spoken.by("render", noise(0.1).toString(), "--match", "--moves", moves("""
            [{"kind": "low-shelf", "frequencyHz": 2000, "changeDb": -12}]"""), "-o", out.toString());
        assertThat(spoken.out()).contains("Loudness: the moved take was brought to the other's by +");
        double before = measured(folder.resolve("out-before.wav")).integratedLufs();
        assertThat(measured(out).integratedLufs()).isCloseTo(before, within(0.05));
    }

    @Test
    void whatWouldClipIsTurnedDownAndSaid() throws IOException {
        Path out = folder.resolve("out.wav");
        Spoken spoken = Spoken.by("render", noise(0.4).toString(), "--moves", moves("""
            [{"kind": "gain", "changeDb": 20}]"""), "-o", out.toString());
        assertThat(spoken.out()).containsPattern("Turned down by 1\\d\\.\\d dB so that no peak passes -1 dBTP");
        assertThat(measured(out).truePeakDbtp()).isCloseTo(-1, within(0.05));
    }

    @Test
    void withoutMovesTheTakeIsWrittenAsItIs() throws IOException {
        Path take = noise(0.2);
        Path out = folder.resolve("out.wav");
        assertThat(Spoken.by("render", take.toString(), "-o", out.toString()).out()).contains("nothing to move", "Written: " + out);
        assertThat(samples(out)).hasSameSizeAs(samples(take));
    }

    @Test
    void theTakeItselfIsNotOverwritten() throws IOException {
        Path take = noise(0.2);
        byte[] bytes = Files.readAllBytes(take);
        Spoken spoken = Spoken.by("render", take.toString(), "-o", take.toString());
        assertThat(spoken.err()).contains("is the take itself; choose another name");
        assertThat(spoken.exitCode()).isEqualTo(2);
        assertThat(Files.readAllBytes(take)).isEqualTo(bytes);
    }

    @Test
    void wrongMovesAreOneLine() throws IOException {
        Spoken spoken = Spoken.by("render", noise(0.2).toString(), "--moves", folder.resolve("none.json").toString(), "-o", folder.resolve("o.wav").toString());
        assertThat(spoken.err().lines()).singleElement().asString().startsWith("moves: ");
        assertThat(spoken.exitCode()).isEqualTo(2);
    }

    /** Learned: half a turn of the volume is 20 dB, all of the bass is 6 dB; nominal they would be 9 and 12. */
    @Test
    void onARigMovesDoWhatWasLearnedOfItsControls() throws IOException {
        Path rig = Files.writeString(folder.resolve("rig.yaml"), """
            name: Kitchen amp
            instrument: steel-string-guitar
            tap: amp-line-out
            controls: amp-bass-mid-treble
            """);
        ControlSet controls = Rig.read(rig, new Presets(folder)).controls();
        learned(controls, "Volume", 3, hz -> -20, rig);
        learned(controls, "Bass", 0, hz -> hz < 300 ? -6 : 0, rig);
        String volume = moves("""
            [{"kind": "volume", "control": "Volume", "from": "5", "to": "3", "changeDb": -9}]""");
        assertThat(changeDb(rig, volume, 1000)).isCloseTo(-20, within(0.05));
        String bass = moves("""
            [{"kind": "low-shelf", "control": "Bass", "frequencyHz": 120, "from": "5", "to": "0", "fromDb": 0, "toDb": -12}]""");
        assertThat(changeDb(rig, bass, 80)).isCloseTo(-6, within(0.5));
    }

    private static void learned(ControlSet controls, String name, double position, DoubleUnaryOperator db, Path rig) {
        Setting five = Setting.neutral(controls.control(name).orElseThrow()).withGain(5);
        List<Double> flat = Collections.nCopies(LearnedControl.FREQUENCIES_HZ.size(), 0.0);
        List<Double> there = LearnedControl.FREQUENCIES_HZ.stream().map(db::applyAsDouble).toList();
        LearnedFile.keep(new LearnedControl(name, LearnedControl.How.SWEEP, List.of(new LearnedControl.Curve(five.withGain(position), there, flat),
            new LearnedControl.Curve(five, flat, flat)), List.of()), rig, controls);
    }

    /** By how much a rendered tone is louder than it was. */
    private double changeDb(Path rig, String moves, double frequencyHz) {
        float[] tone = new float[2 * RATE_HZ];
        for (int i = 0; i < tone.length; i++) {
            tone[i] = (float) (0.1 * Math.sin(2 * Math.PI * frequencyHz * i / RATE_HZ));
        }
        Path take = TakeFile.writePcm(folder.resolve("tone.wav"), tone, RATE_HZ, 24);
        Path out = folder.resolve("tone-out.wav");
        assertThat(Spoken.by("render", take.toString(), "--rig", rig.toString(), "--moves", moves, "-o", out.toString()).err()).isEmpty();
        return 10 * Math.log10(energy(samples(out)) / energy(tone));
    }

    private static double energy(float[] samples) {
        double sum = 0;
        for (int i = samples.length / 2; i < samples.length; i++) {
            sum += samples[i] * samples[i];
        }
        return sum;
    }

    private String moves(String json) throws IOException {
        return Files.writeString(folder.resolve("moves.json"), json).toString();
    }

    private Path noise(double amplitude) {
        SplittableRandom random = new SplittableRandom(7);
        float[] noise = new float[3 * RATE_HZ];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (float) (amplitude * (2 * random.nextDouble() - 1));
        }
        return TakeFile.writePcm(folder.resolve("noise.wav"), noise, RATE_HZ, 24);
    }

    private static EqualisedTake measured(Path file) {
        try (SoundSource source = SoundFiles.open(file, 0)) {
            return EqualisedTake.measure(source, EqChain.FLAT);
        }
    }

    private static float[] samples(Path file) {
        try (SoundSource source = SoundFiles.open(file, 0)) {
            float[] all = new float[(int) source.lengthFrames().orElseThrow()];
            AudioBlock block = new AudioBlock(4096);
            while (source.read(block) >= 0) {
                System.arraycopy(block.samples(), 0, all, (int) block.startFrame(), block.frames());
            }
            return all;
        }
    }
}
