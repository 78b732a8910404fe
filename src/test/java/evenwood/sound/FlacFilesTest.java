package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** FLAC without any other program at hand; encoders' files are in SoundFilesReferenceTest. */
class FlacFilesTest {
    /**
     * One stereo frame of one sample, 25588 and 10416: RFC 9639, appendix D.1, from memory; flac 1.4.2 -t accepts it, with
     * the MD5 sum of its samples.
     */
    private static final String RFC_EXAMPLE = "664c6143800000221000100000000f00000f0ac442f0000000013e84b41807dc690307586a3dad1a2e0f"
        + "fff869180000bf0358fd03128baa9a";

    @TempDir Path folder;

    @Test
    void theFirstExampleOfTheStandardIsRead() throws IOException {
        Path file = write(RFC_EXAMPLE);
        try (SoundFile source = SoundFiles.open(file, 1)) {
            assertThat(source.format()).isEqualTo(new SoundFormat(44_100, 2, 1, 16));
            assertThat(source.lengthFrames()).hasValue(1);
            assertThat(Drained.samples(source)).containsExactly(25_588 / 32_768f);
        }
        assertThat(Drained.samples(file, 2)).containsExactly(10_416 / 32_768f);
    }

    @Test
    void anId3TagInFrontIsSteppedOver() throws IOException {
        assertThat(Drained.samples(write("49443304000000000003616263" + RFC_EXAMPLE), 1)).containsExactly(25_588 / 32_768f);
    }

    @Test
    void aPictureOfSixteenMegabytesThatIsNotThereReservesNothing() throws IOException {
        String withPicture = RFC_EXAMPLE.replaceFirst("80000022", "00000022").substring(0, 84) + "86ffffff";
        Path file = write(withPicture);
        try (SoundFile source = SoundFiles.open(file, 1)) {
            AudioBlock block = new AudioBlock(10);
            assertThat(org.assertj.core.api.Assertions.catchThrowable(() -> source.read(block)))
                .hasMessage("open " + file + ": the FLAC file is cut short; record or export it again");
        }
    }

    private Path write(String hex) throws IOException {
        return Files.write(folder.resolve("take.flac"), HexFormat.of().parseHex(hex));
    }
}
