package evenwood.sound;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Puts WAV files together byte by byte, right or wrong as a test wants them. */
final class WavBytes {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();

    static WavBytes riff() {
        return new WavBytes().letters("RIFF").u32(0xFFFF_FFFFL).letters("WAVE");
    }

    static WavBytes rf64() {
        return new WavBytes().letters("RF64").u32(0xFFFF_FFFFL).letters("WAVE");
    }

    /** A whole file of 16-bit samples. */
    static byte[] pcm16(int sampleRateHz, int channels, int... samples) {
        return riff().fmt(1, channels, sampleRateHz, 2 * channels, 16).letters("data").u32(2L * samples.length)
            .samples16(samples).bytes();
    }

    WavBytes letters(String letters) {
        out.writeBytes(letters.getBytes(StandardCharsets.ISO_8859_1));
        return this;
    }

    WavBytes u16(int value) {
        out.write(value);
        out.write(value >> 8);
        return this;
    }

    WavBytes u32(long value) {
        return u16((int) value).u16((int) (value >> 16));
    }

    WavBytes u64(long value) {
        return u32(value).u32(value >> 32);
    }

    WavBytes raw(int... bytes) {
        for (int value : bytes) {
            out.write(value);
        }
        return this;
    }

    WavBytes fmt(int tag, int channels, long sampleRateHz, int blockAlign, int bits) {
        return letters("fmt ").u32(16).u16(tag).u16(channels).u32(sampleRateHz).u32(sampleRateHz * blockAlign).u16(blockAlign)
            .u16(bits);
    }

    WavBytes extensible(int tag, int channels, long sampleRateHz, int blockAlign, int bits, int validBits) {
        return letters("fmt ").u32(40).u16(0xFFFE).u16(channels).u32(sampleRateHz).u32(sampleRateHz * blockAlign)
            .u16(blockAlign).u16(bits).u16(22).u16(validBits).u32(0).u16(tag)
            .raw(0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xAA, 0, 0x38, 0x9B, 0x71);
    }

    WavBytes samples16(int... samples) {
        for (int sample : samples) {
            u16(sample);
        }
        return this;
    }

    WavBytes floats(float... samples) {
        for (float sample : samples) {
            u32(Float.floatToRawIntBits(sample));
        }
        return this;
    }

    WavBytes doubles(double... samples) {
        ByteBuffer bytes = ByteBuffer.allocate(8 * samples.length).order(ByteOrder.LITTLE_ENDIAN);
        for (double sample : samples) {
            bytes.putDouble(sample);
        }
        out.writeBytes(bytes.array());
        return this;
    }

    byte[] bytes() {
        return out.toByteArray();
    }
}
