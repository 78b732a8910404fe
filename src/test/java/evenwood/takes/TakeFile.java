package evenwood.takes;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/**
 * Plain WAV files for tests, written and read without the product's own reader so that the two can check each other.
 *
 * <p>Writes mono PCM of 8 (unsigned), 16, 24 or 32 bits or 32-bit float; reads what the renderer writes (PCM 24, float 32).
 */
public final class TakeFile {
    private static final int PCM = 1;
    private static final int FLOAT = 3;

    private TakeFile() { }

    /** Mono integer PCM; rounds to nearest and clips as a converter does. */
    public static Path writePcm(Path path, float[] samples, int sampleRateHz, int bits) {
        int bytesPerSample = bits / 8;
        ByteBuffer out = header(samples.length * bytesPerSample, PCM, bits, sampleRateHz);
        double scale = Math.pow(2, bits - 1);
        for (float sample : samples) {
            long code = Math.round(Math.max(-scale, Math.min(scale - 1, sample * scale))) + (bits == 8 ? 128 : 0);
            for (int b = 0; b < bytesPerSample; b++) {
                out.put((byte) (code >> 8 * b));
            }
        }
        return write(path, out);
    }

    public static Path writeFloat(Path path, float[] samples, int sampleRateHz) {
        ByteBuffer out = header(samples.length * 4, FLOAT, 32, sampleRateHz);
        for (float sample : samples) {
            out.putFloat(sample);
        }
        return write(path, out);
    }

    /** All channels averaged to one. */
    static float[] readMono(Path path) {
        try {
            ByteBuffer in = ByteBuffer.wrap(Files.readAllBytes(path)).order(ByteOrder.LITTLE_ENDIAN);
            int channels = 0;
            int bits = 0;
            in.position(12);
            while (in.remaining() >= 8) {
                String id = new String(new byte[] {in.get(), in.get(), in.get(), in.get()}, StandardCharsets.US_ASCII);
                int size = in.getInt();
                int next = in.position() + size + (size & 1);
                if (id.equals("fmt ")) {
                    channels = in.getShort(in.position() + 2);
                    bits = in.getShort(in.position() + 14);
                } else if (id.equals("data")) {
                    return mono(in, Math.min(size, in.remaining()), channels, bits);
                }
                in.position(next);
            }
            throw new IllegalStateException("read rendered take: no data in " + path);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static float[] mono(ByteBuffer in, int bytes, int channels, int bits) {
        int frames = bytes / (channels * bits / 8);
        float[] mono = new float[frames];
        for (int i = 0; i < frames; i++) {
            double sum = 0;
            for (int c = 0; c < channels; c++) {
                sum += bits == 32 ? in.getFloat() : ((in.get() & 0xFF) | (in.get() & 0xFF) << 8 | in.get() << 16) / 8_388_608.0;
            }
            mono[i] = (float) (sum / channels);
        }
        return mono;
    }

    private static ByteBuffer header(int dataBytes, int tag, int bits, int sampleRateHz) {
        ByteBuffer out = ByteBuffer.allocate(44 + dataBytes).order(ByteOrder.LITTLE_ENDIAN);
        out.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + dataBytes).put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII));
        out.putInt(16).putShort((short) tag).putShort((short) 1).putInt(sampleRateHz).putInt(sampleRateHz * bits / 8);
        out.putShort((short) (bits / 8)).putShort((short) bits);
        return out.put("data".getBytes(StandardCharsets.US_ASCII)).putInt(dataBytes);
    }

    /** Complete or not there at all, also when two test runs write the same file. */
    private static Path write(Path path, ByteBuffer bytes) {
        try {
            Files.createDirectories(path.toAbsolutePath().getParent());
            Path part = Files.createTempFile(path.toAbsolutePath().getParent(), "part", ".wav");
            Files.write(part, bytes.array());
            return Files.move(part, path, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
