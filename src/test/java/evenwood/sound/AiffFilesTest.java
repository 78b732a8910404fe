package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** AIFF put together byte by byte; files of other programs are in SoundFilesReferenceTest. */
class AiffFilesTest {
    /** 44100 and 8000 Hz as 80-bit numbers: 44100 = 0xAC44·2⁰, so exponent 16383 + 15 and mantissa 0xAC44 at the top. */
    private static final int[] RATE_44100 = {0x40, 0x0E, 0xAC, 0x44, 0, 0, 0, 0, 0, 0};
    private static final int[] RATE_8000 = {0x40, 0x0B, 0xFA, 0, 0, 0, 0, 0, 0, 0};

    @TempDir Path folder;

    @Test
    void samplesAreBigEndianAndTheRateIsAnEightyBitNumber() throws IOException {
        Path file = aiff("AIFF", RATE_44100, 1, 2, 16, "", 0, 12, 0x40, 0, 0xFF, 0xFF);
        try (SoundFile source = SoundFiles.open(file, 1)) {
            assertThat(source.format()).isEqualTo(new SoundFormat(44_100, 1, 1, 16));
            assertThat(source.lengthFrames()).hasValue(2);
            assertThat(Drained.samples(source)).containsExactly(0.5f, -1 / 32_768f);
        }
    }

    @Test
    void sowtIsLittleEndian() throws IOException {
        assertThat(Drained.samples(aiff("AIFC", RATE_8000, 2, 1, 16, "sowt", 0, 12, 1, 0, 0, 0x40), 2)).containsExactly(0.5f);
    }

    @Test
    void twelveBitsStandInTheHighBitsOfTwoBytes() throws IOException {
        Path file = aiff("AIFF", RATE_8000, 1, 1, 12, "", 0, 10, 0x7F, 0xF0);
        try (SoundFile source = SoundFiles.open(file, 1)) {
            assertThat(source.format().bitDepth()).isEqualTo(12);
            assertThat(Drained.samples(source)).containsExactly((float) source.format().positiveFullScale());
        }
    }

    @Test
    void anOffsetBeforeTheSamplesIsSteppedOver() throws IOException {
        assertThat(Drained.samples(aiff("AIFF", RATE_8000, 1, 1, 16, "", 3, 13, 9, 9, 9, 0x40, 0), 1)).containsExactly(0.5f);
    }

    @Test
    void aStreamedSizeAndNoFrameCountRunToTheEnd() throws IOException {
        assertThat(Drained.samples(aiff("AIFF", RATE_8000, 1, 0, 16, "", 0, -1, 0x40, 0, 0x20, 0), 1)).containsExactly(0.5f, 0.25f);
    }

    @Test
    void aFileCutShortGivesWhatIsThereAndCountsTheRest() throws IOException {
        try (SoundFile source = SoundFiles.open(aiff("AIFF", RATE_8000, 1, 50, 16, "", 0, 108, 0x40, 0), 1)) {
            assertThat(source.lengthFrames()).hasValue(1);
            assertThat(source.missingFrames()).isEqualTo(49);
            AudioBlock block = new AudioBlock(10);
            assertThat(source.read(block)).isEqualTo(1);
            assertThatThrownBy(() -> source.read(block)).hasMessageContaining("the file is cut short after 0.00 s");
        }
    }

    private Path aiff(String kind, int[] rate, int channels, int frames, int bits, String coding, int offset, int dataSize, int... data)
        throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.writeBytes("FORM");
        out.writeInt(0);
        out.writeBytes(kind + "COMM");
        out.writeInt(18 + coding.length());
        out.writeShort(channels);
        out.writeInt(frames);
        out.writeShort(bits);
        write(out, rate);
        out.write(coding.getBytes(StandardCharsets.ISO_8859_1));
        out.writeBytes("NAME");
        out.writeInt(3);
        out.writeBytes("odd\0SSND");
        out.writeInt(dataSize);
        out.writeInt(offset);
        out.writeInt(0);
        write(out, data);
        return Files.write(folder.resolve("take.aiff"), bytes.toByteArray());
    }

    private static void write(DataOutputStream out, int[] values) throws IOException {
        for (int value : values) {
            out.write(value);
        }
    }
}
