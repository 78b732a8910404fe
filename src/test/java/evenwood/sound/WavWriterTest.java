package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class WavWriterTest {
    @TempDir Path folder;

    @Test
    void everySixteenBitStepComesBackUnchanged() throws IOException {
        float[] steps = new float[65_536];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = (i - 32_768) / 32_768f;
        }
        assertThat(writtenAndRead(WavWriter.Coding.INTEGER_16, steps)).isEqualTo(steps);
    }

    @ParameterizedTest(name = "{0}")
    @EnumSource(WavWriter.Coding.class)
    void anOddNumberOfFramesComesBackWholeInAnEvenFile(WavWriter.Coding coding) throws IOException {
        float[] samples = new float[10_001];
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (random.nextInt(65_536) - 32_768) / 32_768f;
        }
        assertThat(writtenAndRead(coding, samples)).isEqualTo(samples);
        assertThat(Files.size(folder.resolve("out.wav")) % 2).isZero();
    }

    @Test
    void floatsBeyondFullScaleStayAndIntegersAreHeldAndCounted() throws IOException {
        float[] loud = {1.5f, -2f, 1f, -1f, 0.25f};
        assertThat(writtenAndRead(WavWriter.Coding.FLOAT_32, loud)).isEqualTo(loud);
        Path file = folder.resolve("held.wav");
        WavWriter writer = WavWriter.create(file, 48_000, WavWriter.Coding.INTEGER_24);
        writer.write(AudioBlock.of(0, loud));
        writer.close();
        assertThat(Drained.samples(file, 1)).containsExactly(8_388_607 / 8_388_608f, -1, 8_388_607 / 8_388_608f, -1, 0.25f);
        assertThat(writer.clippedSamples()).isEqualTo(3);
        assertThat(writer.frames()).isEqualTo(5);
    }

    /**
     * With triangular dither the mean error is 0 for any level and the error's variance 1/6 + 1/12 = 1/4 step² (sum of
     * the variances of two uniform numbers and of rounding). Bounds: four standard errors of 400,000 samples.
     */
    @Test
    void ditherMakesTheErrorIndependentOfTheSound() throws IOException {
        for (double level : new double[] {0, 0.3, 0.5, 17.75}) {
            float[] constant = new float[400_000];
            Arrays.fill(constant, (float) (level / 32_768));
            Path file = folder.resolve("dithered.wav");
            try (WavWriter writer = WavWriter.createDithered(file, 48_000, WavWriter.Coding.INTEGER_16)) {
                writer.write(constant, constant.length);
            }
            double sum = 0;
            double squares = 0;
            for (float sample : Drained.samples(file, 1)) {
                double error = sample * 32_768.0 - level;
                sum += error;
                squares += error * error;
            }
            assertThat(sum / constant.length).as("mean error at %s steps", level).isCloseTo(0, within(0.0032));
            assertThat(squares / constant.length).as("variance at %s steps", level).isCloseTo(0.25, within(0.0025));
        }
    }

    @Test
    void withoutDitherSilenceStaysSilence() throws IOException {
        assertThat(writtenAndRead(WavWriter.Coding.INTEGER_16, new float[1000])).containsOnly(0);
    }

    @Test
    void beyondTheRiffLimitTheFileBecomesRf64() throws IOException {
        Path file = folder.resolve("long.wav");
        float[] samples = new float[3000];
        Arrays.fill(samples, 0.5f);
        try (WavWriter writer = new WavWriter(file, 48_000, WavWriter.Coding.INTEGER_24, false, 8000)) {
            writer.write(samples, samples.length);
        }
        assertThat(Files.readAllBytes(file)).startsWith('R', 'F', '6', '4');
        assertThat(Drained.samples(file, 1)).isEqualTo(samples);
        assertThat(Tool.ffmpegSamples(file)).isEqualTo(samples);
    }

    @Test
    void otherProgramsReadEveryCoding() throws IOException {
        float[] samples = {0.5f, -0.25f, 0.125f, -1, 0, 0.75f, 0.5f};
        for (WavWriter.Coding coding : WavWriter.Coding.values()) {
            writtenAndRead(coding, samples);
            assertThat(Tool.ffmpegSamples(folder.resolve("out.wav"))).as("%s", coding).isEqualTo(samples);
            Tool.run(folder, "sox", "out.wav", "-b", "32", "-e", "floating-point", "again.wav");
            assertThat(Drained.samples(folder.resolve("again.wav"), 1)).as("%s through sox", coding).isEqualTo(samples);
        }
    }

    @Test
    void aTakeWhoseProgramWasKilledCanStillBeRead() {
        Path file = folder.resolve("killed.wav");
        WavWriter writer = WavWriter.create(file, 48_000, WavWriter.Coding.INTEGER_24);
        float[] samples = new float[100_000];
        Arrays.fill(samples, -0.5f);
        writer.write(samples, samples.length);
        float[] rescued = Drained.samples(file, 1);
        assertThat(rescued.length).isBetween(80_000, 100_000);
        assertThat(rescued).containsOnly(-0.5f);
        writer.close();
        assertThat(Drained.samples(file, 1)).isEqualTo(samples);
    }

    @Test
    void aNewFileReplacesALongerOldOne() throws IOException {
        writtenAndRead(WavWriter.Coding.FLOAT_32, new float[5000]);
        assertThat(writtenAndRead(WavWriter.Coding.INTEGER_16, new float[] {0.5f})).containsExactly(0.5f);
        assertThat(Files.size(folder.resolve("out.wav"))).isEqualTo(82);
    }

    @Test
    void whatCannotBeWrittenSaysSoInOneLine() {
        Path nowhere = folder.resolve("no such folder").resolve("out.wav");
        assertThatThrownBy(() -> WavWriter.create(nowhere, 48_000, WavWriter.Coding.INTEGER_16)).isInstanceOf(SoundProblem.class)
            .hasMessage("write " + nowhere + ": it cannot be created (" + nowhere
                + " (No such file or directory)); check the folder and its permissions");
        assertThatThrownBy(() -> WavWriter.create(folder, 48_000, WavWriter.Coding.INTEGER_16)).isInstanceOf(SoundProblem.class)
            .hasMessage("write " + folder + ": it is a folder; name a file in it");
    }

    private float[] writtenAndRead(WavWriter.Coding coding, float[] samples) throws IOException {
        Path file = folder.resolve("out.wav");
        try (WavWriter writer = WavWriter.create(file, 44_100, coding)) {
            writer.write(samples, samples.length);
        }
        try (SoundFile source = SoundFiles.open(file, 1)) {
            assertThat(source.format().sampleRateHz()).isEqualTo(44_100);
            assertThat(source.lengthFrames()).hasValue(samples.length);
            return Drained.samples(source);
        }
    }
}
