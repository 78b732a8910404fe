package evenwood.sound;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SplittableRandom;

/**
 * Writes mono sound to a WAV file as it comes, in constant memory.
 *
 * <p>In: blocks, full scale ±1.0. Out: a WAV file; beyond 4 GiB an RF64 file, for which the header keeps a place. Until
 * it is closed the header says "to the end of the file", so that a take whose program was killed can still be read.
 * <p>How: integers are the nearest step of 2^−(bits−1), so what was read from such a file is written back unchanged;
 * samples beyond full scale are held at it and counted. Dither, when asked for, is the sum of two uniform random numbers
 * of one step each (triangular, variance 1/6 step²), from a fixed seed so that the same take gives the same file.
 * Source: reference §15 for the layout, EBU Tech 3306 for RF64; dither as is common practice.
 * <p>Thread: one owner. {@link #write} allocates nothing; it waits for the disk.
 */
public final class WavWriter implements AutoCloseable {
    /** How samples are kept. */
    public enum Coding {
        INTEGER_16(16), INTEGER_24(24), FLOAT_32(32);

        private final int bits;

        Coding(int bits) {
            this.bits = bits;
        }
    }

    private static final int BUFFER_BYTES = 1 << 16;
    private static final long DITHER_SEED = 1;

    private final String name;
    private final RandomAccessFile file;
    private final WavFileHeader header;
    private final Coding coding;
    private final double steps;
    private final SplittableRandom dither;
    private final byte[] buffer = new byte[BUFFER_BYTES];
    private int filled;
    private long frames;
    private long clippedSamples;
    private boolean closed;

    WavWriter(Path path, int sampleRateHz, Coding coding, boolean dithered, long mostRiffBytes) {
        name = path.toString().replaceAll("\\p{Cntrl}", "?");
        this.coding = coding;
        steps = coding == Coding.FLOAT_32 ? 0 : Math.pow(2, coding.bits - 1);
        dither = dithered && coding != Coding.FLOAT_32 ? new SplittableRandom(DITHER_SEED) : null;
        header = new WavFileHeader(sampleRateHz, coding.bits, coding == Coding.FLOAT_32, mostRiffBytes);
        if (Files.isDirectory(path)) {
            throw SoundProblem.atStart("write " + name + ": it is a folder; name a file in it").of(SoundTrouble.WRITE_FOLDER, name);
        }
        try {
            file = new RandomAccessFile(path.toFile(), "rw");
            file.setLength(0);
            file.write(header.unfinished());
        } catch (FileNotFoundException e) {
            throw SoundProblem.atStart("write " + name + ": it cannot be created (" + e.getMessage()
                + "); check the folder and its permissions", e).of(SoundTrouble.WRITE_REFUSED, name);
        } catch (IOException e) {
            throw failed(e);
        }
    }

    /** Begins a file, in place of one of that name. */
    public static WavWriter create(Path path, int sampleRateHz, Coding coding) {
        return new WavWriter(path, sampleRateHz, coding, false, WavFileHeader.MOST_RIFF_BYTES);
    }

    /** The same with dither, for sound that was computed and is now rounded to 16 or 24 bits. */
    public static WavWriter createDithered(Path path, int sampleRateHz, Coding coding) {
        return new WavWriter(path, sampleRateHz, coding, true, WavFileHeader.MOST_RIFF_BYTES);
    }

    public void write(AudioBlock block) {
        write(block.samples(), block.frames());
    }

    /** Appends the first so many samples of the array. */
    public void write(float[] samples, int count) {
        int bytes = coding.bits / 8;
        for (int i = 0; i < count; i++) {
            if (filled + bytes > BUFFER_BYTES) {
                flush();
            }
            put(coding == Coding.FLOAT_32 ? Float.floatToRawIntBits(samples[i]) : step(samples[i]), bytes);
        }
        frames += count;
    }

    private int step(float sample) {
        double wanted = sample * steps + (dither == null ? 0 : dither.nextDouble() + dither.nextDouble() - 1);
        double nearest = Math.rint(wanted);
        if (nearest > steps - 1 || nearest < -steps) {
            clippedSamples++;
        }
        return (int) Math.max(-steps, Math.min(steps - 1, nearest));
    }

    private void put(int value, int bytes) {
        for (int i = 0; i < bytes; i++) {
            buffer[filled++] = (byte) (value >> 8 * i);
        }
    }

    /** How many frames have been written. */
    public long frames() {
        return frames;
    }

    /** How many samples were beyond the integer's full scale and are held at it. */
    public long clippedSamples() {
        return clippedSamples;
    }

    private void flush() {
        try {
            file.write(buffer, 0, filled);
            filled = 0;
        } catch (IOException e) {
            throw failed(e);
        }
    }

    private SoundProblem failed(IOException e) {
        return SoundProblem.midway("write " + name + ": it cannot be written on (" + e.getMessage()
            + "); what came before is kept, check the free space of the disk", e).of(SoundTrouble.WRITE_FAILED, name);
    }

    /** Finishes the header; the file is not whole before. */
    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        try (file) {
            long dataBytes = frames * coding.bits / 8;
            if ((dataBytes & 1) == 1) {
                put(0, 1);
            }
            file.write(buffer, 0, filled);
            file.seek(0);
            file.write(header.finished(dataBytes));
        } catch (IOException e) {
            throw failed(e);
        }
    }
}
