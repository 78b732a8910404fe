package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.Needs;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Runs a general-purpose sound program of the machine, to make a file or to decode one for comparison. */
final class Tool {
    private Tool() { }

    static void run(Path folder, String... command) {
        run(folder, folder.resolve("tool-output.txt"), command);
    }

    /** Runs with the standard output going to a file, as when a recorder writes into a pipe. */
    static void run(Path folder, Path output, String... command) {
        Needs.program(command[0]);
        try {
            Path words = folder.resolve("tool-words.txt");
            Process process = new ProcessBuilder(command).directory(folder.toFile()).redirectError(words.toFile())
                .redirectOutput(output.toFile()).start();
            process.getOutputStream().close();
            assertThat(process.waitFor()).as("%s said: %s", List.of(command), Files.readString(words)).isZero();
        } catch (IOException e) {
            throw new AssertionError("run " + List.of(command), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted while running " + List.of(command), e);
        }
    }

    /** What ffmpeg decodes from a file: all channels side by side as floats. */
    static float[] ffmpegSamples(Path file) throws IOException {
        Path folder = file.getParent();
        run(folder, "ffmpeg", "-v", "error", "-y", "-i", file.toString(), "-f", "f32le", "-c:a", "pcm_f32le", "decoded.f32");
        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(folder.resolve("decoded.f32"))).order(ByteOrder.LITTLE_ENDIAN);
        float[] samples = new float[bytes.remaining() / 4];
        bytes.asFloatBuffer().get(samples);
        return samples;
    }
}
