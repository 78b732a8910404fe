package evenwood.sound;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * How one uncompressed sample is written, and how it becomes a number.
 *
 * <p>Integers of b bits are divided by 2^(b−1), so they span −1 to 1 − 2^(1−b); 8-bit WAV is unsigned around 128.
 * <p>Thread: stateless; the loops allocate nothing. They may fetch up to one byte behind the last sample
 * ({@link FileBytes#SLACK_BYTES}).
 */
enum PcmCoding {
    UNSIGNED_8(1, false), SIGNED_8(1, false),
    SIGNED_16_LITTLE(2, false), SIGNED_16_BIG(2, true),
    SIGNED_24_LITTLE(3, false), SIGNED_24_BIG(3, true),
    SIGNED_32_LITTLE(4, false), SIGNED_32_BIG(4, true),
    FLOAT_32_LITTLE(4, false), FLOAT_32_BIG(4, true),
    FLOAT_64_LITTLE(8, false), FLOAT_64_BIG(8, true),
    A_LAW(1, false), MU_LAW(1, false);

    private static final VarHandle SHORT = MethodHandles.byteArrayViewVarHandle(short[].class, ByteOrder.LITTLE_ENDIAN);
    private static final VarHandle INT = MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);
    private static final VarHandle LONG = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final float PER_8_BIT_STEP = 1f / (1 << 7);
    private static final float PER_16_BIT_STEP = 1f / (1 << 15);
    private static final float PER_24_BIT_STEP = 1f / (1 << 23);
    private static final float PER_32_BIT_STEP = 1f / (1L << 31);

    private final int bytes;
    private final boolean bigEndian;

    PcmCoding(int bytes, boolean bigEndian) {
        this.bytes = bytes;
        this.bigEndian = bigEndian;
    }

    int bytes() {
        return bytes;
    }

    /** The bit depth of {@link SoundFormat}: how many bits count, or 0 where there is no plain highest code. */
    int bitDepth(int validBits) {
        return switch (this) {
            case FLOAT_32_LITTLE, FLOAT_32_BIG, FLOAT_64_LITTLE, FLOAT_64_BIG, A_LAW, MU_LAW -> 0;
            default -> validBits >= 1 && validBits <= 8 * bytes ? validBits : 8 * bytes;
        };
    }

    /** Decodes samples that stand one after the other, whatever their channels. */
    void decode(byte[] from, int at, float[] to, int offset, int samples) {
        switch (this) {
            case UNSIGNED_8 -> unsigned8(from, at, to, offset, samples);
            case SIGNED_8 -> signed8(from, at, to, offset, samples);
            case SIGNED_16_LITTLE, SIGNED_16_BIG -> signed16(from, at, to, offset, samples);
            case SIGNED_24_LITTLE, SIGNED_24_BIG -> signed24(from, at, to, offset, samples);
            case SIGNED_32_LITTLE, SIGNED_32_BIG -> signed32(from, at, to, offset, samples);
            case FLOAT_32_LITTLE, FLOAT_32_BIG -> float32(from, at, to, offset, samples);
            case FLOAT_64_LITTLE, FLOAT_64_BIG -> float64(from, at, to, offset, samples);
            case A_LAW -> companded(CompandedSteps.A_LAW, from, at, to, offset, samples);
            case MU_LAW -> companded(CompandedSteps.MU_LAW, from, at, to, offset, samples);
        }
    }

    private static void unsigned8(byte[] from, int at, float[] to, int offset, int samples) {
        for (int i = 0; i < samples; i++) {
            to[offset + i] = ((from[at + i] & 0xFF) - 128) * PER_8_BIT_STEP;
        }
    }

    private static void signed8(byte[] from, int at, float[] to, int offset, int samples) {
        for (int i = 0; i < samples; i++) {
            to[offset + i] = from[at + i] * PER_8_BIT_STEP;
        }
    }

    private void signed16(byte[] from, int at, float[] to, int offset, int samples) {
        for (int i = 0; i < samples; i++) {
            short raw = (short) SHORT.get(from, at + 2 * i);
            to[offset + i] = (bigEndian ? Short.reverseBytes(raw) : raw) * PER_16_BIT_STEP;
        }
    }

    /** Fetches four bytes and lets the stranger among them fall out of the shift, which also extends the sign. */
    private void signed24(byte[] from, int at, float[] to, int offset, int samples) {
        for (int i = 0; i < samples; i++) {
            int raw = (int) INT.get(from, at + 3 * i);
            to[offset + i] = (bigEndian ? Integer.reverseBytes(raw) >> 8 : raw << 8 >> 8) * PER_24_BIT_STEP;
        }
    }

    private void signed32(byte[] from, int at, float[] to, int offset, int samples) {
        for (int i = 0; i < samples; i++) {
            to[offset + i] = int32(from, at + 4 * i) * PER_32_BIT_STEP;
        }
    }

    private void float32(byte[] from, int at, float[] to, int offset, int samples) {
        for (int i = 0; i < samples; i++) {
            to[offset + i] = Float.intBitsToFloat(int32(from, at + 4 * i));
        }
    }

    private void float64(byte[] from, int at, float[] to, int offset, int samples) {
        for (int i = 0; i < samples; i++) {
            long raw = (long) LONG.get(from, at + 8 * i);
            to[offset + i] = (float) Double.longBitsToDouble(bigEndian ? Long.reverseBytes(raw) : raw);
        }
    }

    private int int32(byte[] from, int at) {
        int raw = (int) INT.get(from, at);
        return bigEndian ? Integer.reverseBytes(raw) : raw;
    }

    private static void companded(CompandedSteps steps, byte[] from, int at, float[] to, int offset, int samples) {
        for (int i = 0; i < samples; i++) {
            to[offset + i] = steps.sample(from[at + i]);
        }
    }
}
