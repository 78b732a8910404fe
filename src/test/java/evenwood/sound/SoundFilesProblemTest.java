package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every way a file can be wrong gives the player one line: what was being done, what is wrong, what to do next. */
class SoundFilesProblemTest {
    private static final String AGAIN = "; record or export it again";
    private static final String READ = "; WAV, AIFF, FLAC, OGG Vorbis and MP3 are read";
    private static final String CONVERT = "; convert it to WAV or FLAC";

    @TempDir Path folder;

    @Test
    void aMissingFileIsNamed() {
        refused(folder.resolve("nowhere.wav"), "there is no such file; check the path");
    }

    @Test
    void aFolderIsNoFile() {
        refused(folder, "it is a folder; name one sound file in it");
    }

    @Test
    void aNameWithALineBreakStaysOneLine() {
        assertThatThrownBy(() -> SoundFiles.open(folder.resolve("a\nb.wav"), 1)).isInstanceOf(SoundProblem.class)
            .hasMessage("open " + folder + "/a?b.wav: there is no such file; check the path");
    }

    /** A superuser, as in a container, may read everything; then the file must simply be heard. */
    @Test
    void aFileThatMayNotBeReadSaysSo() throws IOException {
        Path file = write("locked.wav", WavBytes.pcm16(48_000, 1, 1));
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("---------"));
        if (Files.isReadable(file)) {
            assertThat(Drained.samples(file, 1)).containsExactly(1 / 32_768f);
        } else {
            refused(file, "it may not be read (no permission); change its permissions or copy it");
        }
    }

    static Stream<Arguments> wrongFiles() {
        byte[] png = {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0, 0, 0, 13};
        return Stream.of(
            wrong("empty.wav", new byte[0], "the file is empty (0 bytes)" + AGAIN),
            wrong("text.wav", bytes("Dear diary, today I played the fiddle."), "it is a text file, not a sound file" + READ),
            wrong("picture.wav", png, "it is a PNG picture, not a sound file" + READ),
            wrong("songs.zip", bytes("PK\u0003\u0004..........."), "it is a ZIP archive, not a sound file" + READ),
            wrong("score.mid", bytes("MThd\0\0\0\6\0\1\0\1"), "it is a MIDI file, which holds notes, not a sound file" + READ),
            wrong("film.avi", bytes("RIFF\1\0\0\0AVI LIST"), "it is a RIFF file of the kind \"AVI \", not a sound file" + READ),
            wrong("phone.m4a", bytes("\0\0\0 ftypM4A \0\0"), "it is an MP4 or M4A file, which is not read" + CONVERT),
            wrong("zeros.wav", new byte[5000], "it begins with nothing but zero bytes, so it is no sound file" + READ),
            wrong("noise.flac", new byte[] {-1, 3, 7, -9, 1, 5, 2, 7, 8, 1, 1, 9, 3},
                "its content is no sound of a known kind, although its name ends in .flac" + READ),
            wrong("noise", new byte[] {-1, 3, 7, -9, 1, 5, 2, 7, 8, 1, 1, 9, 3}, "its content is no sound of a known kind" + READ),
            wrong("cut.wav", bytes("RIFF\1"), "the file ends in the middle of its header" + AGAIN),
            wrong("cut.wav", Arrays.copyOf(WavBytes.pcm16(48_000, 1, 1), 30), "its WAV header is broken (a format chunk of 16 bytes)" + AGAIN),
            wrong("cut.wav", Arrays.copyOf(WavBytes.pcm16(48_000, 1, 1), 44),
                "the file holds no sound (its header is there, but no samples)" + AGAIN),
            wrong("nodata.wav", WavBytes.riff().fmt(1, 1, 48_000, 2, 16).bytes(),
                "the file holds no sound (its header is there, but no samples)" + AGAIN),
            wrong("tagged.wav", WavBytes.riff().fmt(1, 1, 48_000, 2, 16).letters("data").u32(0).letters("LIST").u32(4).letters("INFO").bytes(),
                "the file holds no sound (its header is there, but no samples)" + AGAIN),
            wrong("onebyte.wav", WavBytes.riff().fmt(1, 1, 48_000, 2, 16).letters("data").u32(1).raw(7).bytes(),
                "the file holds no sound (its header is there, but no samples)" + AGAIN),
            wrong("noformat.wav", WavBytes.riff().letters("data").u32(2).u16(1).bytes(), "its WAV header is broken (no format chunk)" + AGAIN),
            wrong("huge.wav", WavBytes.riff().letters("fmt ").u32(0xFFFF_FFFFL).u16(1).u16(1).u32(48_000).bytes(),
                "its WAV header is broken (a format chunk of 4294967295 bytes)" + AGAIN),
            wrong("channels.wav", WavBytes.riff().fmt(1, 0, 48_000, 2, 16).letters("data").u32(2).u16(1).bytes(),
                "its header says channels=0, but 1 to 64 are read" + AGAIN),
            wrong("channels.wav", WavBytes.riff().fmt(1, 65_535, 48_000, 2, 16).letters("data").u32(2).u16(1).bytes(),
                "its header says channels=65535, but 1 to 64 are read" + AGAIN),
            wrong("rate.wav", WavBytes.riff().fmt(1, 1, 0, 2, 16).letters("data").u32(2).u16(1).bytes(),
                "its header says sampleRateHz=0, but 8000 to 192000 Hz are read; convert it to 48000 Hz"),
            wrong("rate.wav", WavBytes.pcm16(384_000, 1, 1),
                "its header says sampleRateHz=384000, but 8000 to 192000 Hz are read; convert it to 48000 Hz"),
            wrong("rate.wav", WavBytes.pcm16(7_999, 1, 1),
                "its header says sampleRateHz=7999, but 8000 to 192000 Hz are read; convert it to 48000 Hz"),
            wrong("align.wav", WavBytes.riff().fmt(1, 2, 48_000, 3, 16).letters("data").u32(2).u16(1).bytes(),
                "its WAV header is broken (channels=2, blockAlign=3, bitsPerSample=16 do not fit together)" + AGAIN),
            wrong("align.wav", WavBytes.riff().fmt(1, 1, 48_000, 0, 16).letters("data").u32(2).u16(1).bytes(),
                "its WAV header is broken (channels=1, blockAlign=0, bitsPerSample=16 do not fit together)" + AGAIN),
            wrong("bits.wav", WavBytes.riff().fmt(1, 1, 48_000, 2, 24).letters("data").u32(2).u16(1).bytes(),
                "its WAV header is broken (channels=1, blockAlign=2, bitsPerSample=24 do not fit together)" + AGAIN),
            wrong("adpcm.wav", WavBytes.riff().fmt(0x11, 1, 48_000, 2, 4).letters("data").u32(2).u16(1).bytes(),
                "its samples are coded as IMA ADPCM, but only plain integers, floats, A-law and mu-law are read from a WAV file" + CONVERT),
            wrong("odd.wav", WavBytes.riff().fmt(0xBEEF, 1, 48_000, 2, 4).letters("data").u32(2).u16(1).bytes(), "its samples are coded as "
                + "format tag 0xBEEF, but only plain integers, floats, A-law and mu-law are read from a WAV file" + CONVERT),
            wrong("cut.aiff", bytes("FORM\0\0\0\14AIFFCOMM\0\0"), "its AIFF header is broken (no COMM chunk)" + AGAIN),
            wrong("ima.aifc", bytes("FORM\0\0\0\42AIFCCOMM\0\0\0\26\0\1\0\0\0\1\0\20\100\16\273\200\0\0\0\0\0\0ima4"
                + "SSND\0\0\0\12\0\0\0\0\0\0\0\0\1\1"), "its samples are coded as \"ima4\", but only plain integers, floats, A-law and "
                + "mu-law are read from an AIFF file" + CONVERT),
            wrong("cut.flac", bytes("fLaC\0\0"), "the file ends in the middle of its header" + AGAIN),
            wrong("odd.flac", bytes("fLaC\4\0\0\1......"), "its FLAC header is broken (no stream description)" + AGAIN),
            wrong("odd.ogg", bytes("OggS........................................."), "the Ogg Vorbis stream is damaged" + AGAIN),
            wrong("text.mp3", bytes("la la la la la la la la la"), "it is a text file, not a sound file" + READ),
            wrong("tag.mp3", bytes("ID3\4\0\0\0\0\0\5xxxxx\1\2\3\4\5\6\7\10\1\2\3\4"),
                "its content is no sound of a known kind, although its name ends in .mp3" + READ));
    }

    @ParameterizedTest(name = "{0}: {2}")
    @MethodSource("wrongFiles")
    void eachWrongFileGetsItsLine(String name, byte[] content, String words) throws IOException {
        refused(write(name, content), words);
    }

    @Test
    void aChannelThatIsNotThereIsRefused() throws IOException {
        Path mono = write("mono.wav", WavBytes.pcm16(48_000, 1, 1));
        refused(mono, 2, "channel=2 was asked for, but the file has one channel; choose one of them with --channel");
        Path stereo = write("stereo.wav", WavBytes.pcm16(48_000, 2, 1, 1));
        refused(stereo, 3, "channel=3 was asked for, but the file has channels 1 to 2; choose one of them with --channel");
        refused(stereo, -1, "channel=-1 was asked for, but the file has channels 1 to 2; choose one of them with --channel");
    }

    @Test
    void aClaimOfFourGigabytesIsClampedToTheFileAndToldApartFromAStream() throws IOException {
        Path cut = write("cut.wav", WavBytes.riff().fmt(1, 1, 48_000, 2, 16).letters("data").u32(96_000).samples16(1, 2).bytes());
        try (SoundFile file = SoundFiles.open(cut, 1)) {
            assertThat(file.lengthFrames()).hasValue(2);
            assertThat(file.missingFrames()).isEqualTo(47_998);
        }
        Path piped = write("piped.wav", WavBytes.riff().fmt(1, 1, 48_000, 2, 16).letters("data").u32(0xFFFF_FFF0L).samples16(1, 2).bytes());
        try (SoundFile file = SoundFiles.open(piped, 1)) {
            assertThat(file.lengthFrames()).hasValue(2);
            assertThat(file.missingFrames()).isZero();
        }
    }

    @Test
    void aCutLongRecordingIsNotTakenForAStream() throws IOException {
        long claimed = 6L << 30;
        Path cut = write("long.wav", WavBytes.rf64().letters("ds64").u32(28).u64(claimed + 60).u64(claimed).u64(claimed / 2).u32(0).fmt(1, 1, 48_000, 2, 16).letters("data").u32(0xFFFF_FFFFL).samples16(1, 2).bytes());
        try (SoundFile file = SoundFiles.open(cut, 1)) {
            assertThat(file.missingFrames()).isEqualTo(claimed / 2 - 2);
        }
    }

    @Test
    void aWavFileCutShortSaysSo() throws IOException {
        byte[] whole = Files.readAllBytes(encoded("copy.wav", "cp", "source.wav", "copy.wav"));
        failsMidway(write("cut.wav", Arrays.copyOf(whole, whole.length / 2)), "the file is cut short after");
    }

    @Test
    void anMp3FileThatNotesItsLengthSaysWhenItIsCutShort() throws IOException {
        byte[] whole = Files.readAllBytes(encoded("take.mp3", "lame", "--quiet", "-b", "64", "source.wav", "take.mp3"));
        for (int part = 2; part < 12; part++) {
            failsMidway(write("cut.mp3", Arrays.copyOf(whole, whole.length * part / (part + 1))), "the MP3 file is cut short after");
        }
    }

    @Test
    void anMp3FileWithoutThatNoteSaysSoWhenItsLastFrameIsCut() throws IOException {
        byte[] whole = Files.readAllBytes(encoded("take.mp3", "lame", "--quiet", "-b", "64", "-t", "source.wav", "take.mp3"));
        failsMidway(write("cut.mp3", Arrays.copyOf(whole, whole.length - 10)), "the MP3 file is cut short after");
        assertThat(Drained.samples(folder.resolve("take.mp3"), 1)).hasSizeGreaterThan(3 * 48_000);
    }

    @Test
    void aDamagedFlacFileKeepsWhatCameBefore() throws IOException {
        Path file = encoded("take.flac", "flac", "-s", "-o", "take.flac", "source.wav");
        byte[] content = Files.readAllBytes(file);
        content[content.length * 3 / 4] ^= 0x10;
        Files.write(file, content);
        failsMidway(file, "the FLAC stream is damaged after");
    }

    @Test
    void aFlacFileCutShortSaysSo() throws IOException {
        Path file = encoded("take.flac", "flac", "-s", "-o", "take.flac", "source.wav");
        byte[] content = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(content, content.length / 2));
        failsMidway(file, "the FLAC file is cut short after");
    }

    @Test
    void aDamagedVorbisFileKeepsWhatCameBefore() throws IOException {
        Path file = encoded("take.ogg", "oggenc", "-Q", "-o", "take.ogg", "source.wav");
        byte[] content = Files.readAllBytes(file);
        content[content.length * 3 / 4] ^= 0x10;
        Files.write(file, content);
        failsMidway(file, "the Ogg Vorbis stream is damaged after");
    }

    @Test
    void aVorbisFileBehindAnotherIsNotLeftOutSilently() throws IOException {
        Path file = encoded("take.ogg", "oggenc", "-Q", "-o", "take.ogg", "source.wav");
        Tool.run(folder, "oggenc", "-Q", "-s", "77", "-o", "second.ogg", "source.wav");
        Files.write(file, Files.readAllBytes(folder.resolve("second.ogg")), java.nio.file.StandardOpenOption.APPEND);
        failsMidway(file, "a second sound follows the first in the same Ogg file after");
    }

    @Test
    void anOggFileWithoutItsEndIsMeasuredAndSaidToBeCutShort() throws IOException {
        Path file = encoded("take.ogg", "oggenc", "-Q", "-o", "take.ogg", "source.wav");
        byte[] whole = Files.readAllBytes(file);
        Files.write(file, java.util.Arrays.copyOf(whole, whole.length * 2 / 3));
        failsMidway(file, "the Ogg Vorbis file is cut short after");
    }

    @Test
    void opusInAnOggFileIsNamed() throws IOException {
        Path file = encoded("take.ogg", "ffmpeg", "-v", "error", "-i", "source.wav", "-c:a", "libopus", "take.ogg");
        refused(file, "the Ogg file holds Opus sound, but only Vorbis is read from an Ogg file" + CONVERT);
    }

    @Test
    void coupledChannelsTheDecoderGetsWrongAreNamed() throws IOException {
        encoded("six.wav", "sox", "source.wav", "-c", "6", "six.wav", "gain", "-3");
        Tool.run(folder, "oggenc", "-Q", "-q", "3", "-o", "six.ogg", "six.wav");
        refused(folder.resolve("six.ogg"), "it is an Ogg Vorbis file with 6 coupled channels, which are not read" + CONVERT);
    }

    @Test
    void aDamagedMp3FileKeepsWhatCameBefore() throws IOException {
        Path file = encoded("take.mp3", "lame", "--quiet", "source.wav", "take.mp3");
        byte[] content = Files.readAllBytes(file);
        Arrays.fill(content, content.length * 3 / 4, content.length * 3 / 4 + 2000, (byte) 0x55);
        Files.write(file, content);
        failsMidway(file, "the MP3 stream is damaged after");
    }

    private void failsMidway(Path file, String words) {
        try (SoundFile source = SoundFiles.open(file, 1)) {
            AudioBlock block = new AudioBlock(512);
            long[] frames = {0};
            SoundProblem problem = catchThrowableOfType(SoundProblem.class, () -> {
                for (int n = source.read(block); n > 0; n = source.read(block)) {
                    frames[0] += n;
                }
            });
            assertThat(problem.isMidway()).isTrue();
            assertThat(problem.isDamage()).isTrue();
            assertThat(frames[0]).isGreaterThan(8_000);
            String seconds = String.format(java.util.Locale.ROOT, "%.2f", frames[0] / 48_000.0);
            String advice = words.startsWith("a second") ? "split it into single files" : "record or export it again";
            assertThat(problem).hasMessage("read " + file + ": " + words + " " + seconds + " s; what came before is kept, " + advice);
        }
    }

    private Path encoded(String name, String... command) {
        Tool.run(folder, "sox", "-R", "-n", "-r", "48000", "-b", "16", "source.wav", "synth", "3", "pluck", "A3", "synth", "pinknoise", "mix");
        Tool.run(folder, command);
        return folder.resolve(name);
    }

    private static Arguments wrong(String name, byte[] content, String words) {
        return Arguments.of(name, content, words);
    }

    private static byte[] bytes(String letters) {
        return letters.getBytes(StandardCharsets.ISO_8859_1);
    }

    private Path write(String name, byte[] content) throws IOException {
        return Files.write(folder.resolve(name), content);
    }

    private static void refused(Path file, String words) {
        refused(file, 1, words);
    }

    private static void refused(Path file, int channel, String words) {
        assertThatThrownBy(() -> SoundFiles.open(file, channel)).isInstanceOf(SoundProblem.class)
            .hasMessage("open " + file + ": " + words)
            .satisfies(problem -> assertThat(((SoundProblem) problem).isMidway()).isFalse());
    }
}
