package evenwood.sound;

import java.io.IOException;
import java.util.Arrays;

/**
 * One channel of one FLAC frame: a constant, plain samples, or a prediction and what it missed.
 *
 * <p>How: fixed predictors are differences of order 0 to 4; linear predictors have up to 32 coefficients; the remainders
 * are Rice coded in partitions. Source: RFC 9639, 9.2. Samples are kept in 64 bits, so that side channels of 32-bit
 * sound fit and no product overflows; damage shows in the frame's check sum afterwards.
 * <p>Thread: one reader; nothing here allocates but the constructor.
 */
final class FlacSubframe {
    private static final int[][] FIXED = {{}, {1}, {2, -1}, {3, -3, 1}, {4, -6, 4, -1}};
    private static final int CONSTANT = 0;
    private static final int PLAIN = 1;
    private static final int FIRST_FIXED = 8;
    private static final int FIRST_LINEAR = 32;

    private final FlacBits bits;
    private final int[] coefficients = new int[32];

    FlacSubframe(FlacBits bits) {
        this.bits = bits;
    }

    /** Decodes so many samples of so many bits into the array. */
    void decode(long[] samples, int frames, int bitsPerSample) throws IOException {
        int reserved = (int) bits.bits(1);
        int kind = (int) bits.bits(6);
        int unusedBits = bits.bits(1) == 1 ? bits.zeros() + 1 : 0;
        int width = bitsPerSample - unusedBits;
        if (reserved != 0 || width < 1) {
            throw FlacDecoder.damaged();
        }
        if (kind == CONSTANT) {
            Arrays.fill(samples, 0, frames, bits.signedBits(width));
        } else if (kind == PLAIN) {
            plain(samples, frames, width);
        } else if (kind >= FIRST_FIXED && kind < FIRST_FIXED + FIXED.length) {
            fixed(samples, frames, width, kind - FIRST_FIXED);
        } else if (kind >= FIRST_LINEAR) {
            linear(samples, frames, width, kind - FIRST_LINEAR + 1);
        } else {
            throw FlacDecoder.damaged();
        }
        for (int i = 0; unusedBits > 0 && i < frames; i++) {
            samples[i] <<= unusedBits;
        }
    }

    private void plain(long[] samples, int count, int width) throws IOException {
        for (int i = 0; i < count; i++) {
            samples[i] = bits.signedBits(width);
        }
    }

    private void fixed(long[] samples, int frames, int width, int order) throws IOException {
        warmUp(samples, frames, width, order);
        System.arraycopy(FIXED[order], 0, coefficients, 0, order);
        remainders(samples, frames, order);
        predict(samples, frames, order, 0);
    }

    private void linear(long[] samples, int frames, int width, int order) throws IOException {
        warmUp(samples, frames, width, order);
        int precision = (int) bits.bits(4) + 1;
        int shift = (int) bits.signedBits(5);
        if (precision == 16 || shift < 0) {
            throw FlacDecoder.damaged();
        }
        for (int i = 0; i < order; i++) {
            coefficients[i] = (int) bits.signedBits(precision);
        }
        remainders(samples, frames, order);
        predict(samples, frames, order, shift);
    }

    private void warmUp(long[] samples, int frames, int width, int order) throws IOException {
        if (order > frames) {
            throw FlacDecoder.damaged();
        }
        plain(samples, order, width);
    }

    private void predict(long[] samples, int frames, int order, int shift) {
        for (int i = order; i < frames; i++) {
            long sum = 0;
            for (int j = 0; j < order; j++) {
                sum += coefficients[j] * samples[i - 1 - j];
            }
            samples[i] += sum >> shift;
        }
    }

    /** Partitions of equal length, the first one shorter by the samples that were given plainly. */
    private void remainders(long[] samples, int frames, int order) throws IOException {
        int method = (int) bits.bits(2);
        int partitionOrder = (int) bits.bits(4);
        int length = frames >> partitionOrder;
        if (method > 1 || length << partitionOrder != frames || length < order) {
            throw FlacDecoder.damaged();
        }
        int parameterBits = method == 0 ? 4 : 5;
        int escape = (1 << parameterBits) - 1;
        for (int start = order, end = length; end <= frames; start = end, end += length) {
            int parameter = (int) bits.bits(parameterBits);
            if (parameter == escape) {
                int width = (int) bits.bits(5);
                for (int i = start; i < end; i++) {
                    samples[i] = bits.signedBits(width);
                }
            } else {
                rice(samples, start, end, parameter);
            }
        }
    }

    /** A quotient in zeros, a remainder in plain bits; odd numbers stand for negative ones. */
    private void rice(long[] samples, int start, int end, int parameter) throws IOException {
        for (int i = start; i < end; i++) {
            long quotient = bits.zeros();
            long folded = quotient << parameter | bits.bits(parameter);
            samples[i] = folded >>> 1 ^ -(folded & 1);
        }
    }
}
