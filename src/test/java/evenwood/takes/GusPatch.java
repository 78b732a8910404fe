package evenwood.takes;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The samples of one GF1 patch file, as the freepats package holds them.
 *
 * <p>Format from memory: file, instrument and layer headers of 129, 63 and 47 bytes, then samples with 96-byte headers;
 * checked by the files themselves, whose sizes come out to the byte and whose roots are the notes they sound. Only what
 * freepats uses is read: 16-bit signed, looped forwards.
 */
record GusPatch(List<Sample> samples) {
    private static final int FIRST_SAMPLE = 129 + 63 + 47;
    private static final int SAMPLE_COUNT_AT = 129 + 63 + 6;
    private static final int SAMPLE_HEADER = 96;
    private static final int SIXTEEN_BIT_SIGNED_MASK = 0b11;
    private static final int SIXTEEN_BIT_SIGNED = 0b01;

    /** One recorded note. Frames and hertz; it is meant for notes from {@code lowestHz} to {@code highestHz}. */
    record Sample(float[] wave, int loopStart, int loopEnd, int sampleRateHz, double lowestHz, double highestHz, double rootHz) { }

    static GusPatch read(Path path) {
        try {
            ByteBuffer in = ByteBuffer.wrap(Files.readAllBytes(path)).order(ByteOrder.LITTLE_ENDIAN);
            List<Sample> samples = new ArrayList<>();
            int at = FIRST_SAMPLE;
            for (int i = in.get(SAMPLE_COUNT_AT); i > 0; i--) {
                int bytes = in.getInt(at + 8);
                if ((in.get(at + 55) & SIXTEEN_BIT_SIGNED_MASK) != SIXTEEN_BIT_SIGNED) {
                    throw new IllegalStateException("read patch " + path + ": a sample is not 16-bit signed");
                }
                float[] wave = new float[bytes / 2];
                for (int k = 0; k < wave.length; k++) {
                    wave[k] = in.getShort(at + SAMPLE_HEADER + 2 * k) / 32768f;
                }
                samples.add(new Sample(wave, in.getInt(at + 12) / 2, in.getInt(at + 16) / 2, in.getShort(at + 20) & 0xFFFF,
                    in.getInt(at + 22) / 1000.0, in.getInt(at + 26) / 1000.0, in.getInt(at + 30) / 1000.0));
                at += SAMPLE_HEADER + bytes;
            }
            if (at != in.limit()) {
                throw new IllegalStateException("read patch " + path + ": samples end at byte " + at + " of " + in.limit());
            }
            return new GusPatch(List.copyOf(samples));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The sample meant for a note, or the nearest by root. */
    Sample near(double hz) {
        Sample best = samples.get(0);
        for (Sample sample : samples) {
            boolean meant = hz >= sample.lowestHz && hz < sample.highestHz;
            boolean nearer = Math.abs(Math.log(hz / sample.rootHz)) < Math.abs(Math.log(hz / best.rootHz));
            if (meant) {
                return sample;
            }
            best = nearer ? sample : best;
        }
        return best;
    }
}
