package evenwood.sound;

import java.io.IOException;

/**
 * Finds the samples of an AIFF or AIFF-C file.
 *
 * <p>How: walks the chunks; {@code COMM} says how the samples are written, {@code SSND} holds them. The sample rate is an
 * 80-bit IEEE 754 extended number: sign and 15-bit exponent (bias 16383), 64-bit mantissa with its leading 1. Source:
 * the published AIFF 1.3 and AIFF-C descriptions, from memory; checked against files written by ffmpeg and sox
 * (SoundFilesReferenceTest). Tolerated: unknown chunks, a sample chunk that is streamed (size 0 or 0xFFFFFFFF) or cut
 * short, {@code COMM} behind {@code SSND}.
 */
final class AiffHeader {
    private static final long UNKNOWN_SIZE = 0xFFFF_FFFFL;
    private static final int MOST_CHUNKS = 10_000;
    private static final int COMM_BYTES = 18;
    private static final int EXPONENT_BIAS = 16383;
    private static final int MANTISSA_BITS = 63;

    private final FileBytes bytes;
    private final boolean compressible;
    private int channels;
    private long frames;
    private int bits;
    private long sampleRateHz;
    private String coding;
    private long dataStart = -1;
    private long dataBytes;

    private AiffHeader(FileBytes bytes, boolean compressible) {
        this.bytes = bytes;
        this.compressible = compressible;
    }

    /** Reads from just behind the word AIFF or AIFC. */
    static PcmStretch read(FileBytes bytes, boolean compressible) throws IOException {
        AiffHeader header = new AiffHeader(bytes, compressible);
        header.walk();
        if (header.coding == null) {
            throw new FileFault(SoundTrouble.FILE_BROKEN, "its AIFF header is broken (no COMM chunk)", FileFault.EXPORT_AGAIN);
        }
        FrameShape.check(header.sampleRateHz, header.channels);
        if (header.dataStart < 0) {
            throw FileFault.noSound();
        }
        return new PcmStretch(header.sampleRateHz, header.channels, header.pcmCoding(), header.bits, header.dataStart,
            header.dataBytes, header.frames == 0 ? PcmStretch.TO_THE_END : header.frames);
    }

    private void walk() throws IOException {
        for (int chunk = 0; chunk < MOST_CHUNKS && bytes.remaining() >= 8; chunk++) {
            String name = bytes.fourLetters();
            long size = bytes.u32BigEndian();
            long start = bytes.position();
            if (name.equals("COMM")) {
                comm(size);
            } else if (name.equals("SSND")) {
                long offset = bytes.u32BigEndian();
                bytes.u32BigEndian();
                dataStart = bytes.position() + offset;
                boolean streamed = size == UNKNOWN_SIZE || size == 0;
                dataBytes = streamed ? PcmStretch.TO_THE_END : Math.max(0, size - 8 - offset);
            }
            if (coding != null && dataStart >= 0) {
                return;
            }
            bytes.seek(start + size + (size & 1));
        }
    }

    private void comm(long size) throws IOException {
        if (size < COMM_BYTES) {
            throw new FileFault(SoundTrouble.FILE_BROKEN, "its AIFF header is broken (a COMM chunk of " + size + " bytes)", FileFault.EXPORT_AGAIN);
        }
        channels = bytes.u16BigEndian();
        frames = bytes.u32BigEndian();
        bits = bytes.u16BigEndian();
        sampleRateHz = extended();
        coding = compressible && size >= COMM_BYTES + 4 ? bytes.fourLetters() : "NONE";
    }

    /** An 80-bit number as a whole one; absurd ones come out as 0 or as too large for a sample rate. */
    private long extended() throws IOException {
        int signAndExponent = bytes.u16BigEndian();
        long mantissaHigh = bytes.u32BigEndian();
        long mantissaLow = bytes.u32BigEndian();
        int exponent = (signAndExponent & 0x7FFF) - EXPONENT_BIAS - MANTISSA_BITS;
        double value = Math.scalb((double) mantissaHigh, exponent + 32) + Math.scalb((double) mantissaLow, exponent);
        return (signAndExponent & 0x8000) != 0 ? 0 : Math.round(value);
    }

    private PcmCoding pcmCoding() throws FileFault {
        PcmCoding found = switch (coding) {
            case "NONE", "twos" -> integer(true);
            case "sowt" -> integer(false);
            case "in24" -> PcmCoding.SIGNED_24_BIG;
            case "in32" -> PcmCoding.SIGNED_32_BIG;
            case "42ni" -> PcmCoding.SIGNED_24_LITTLE;
            case "23ni" -> PcmCoding.SIGNED_32_LITTLE;
            case "raw " -> bits <= 8 ? PcmCoding.UNSIGNED_8 : null;
            case "fl32", "FL32" -> PcmCoding.FLOAT_32_BIG;
            case "fl64", "FL64" -> PcmCoding.FLOAT_64_BIG;
            case "alaw", "ALAW" -> PcmCoding.A_LAW;
            case "ulaw", "ULAW" -> PcmCoding.MU_LAW;
            default -> throw new FileFault(SoundTrouble.FILE_CODING, "its samples are coded as \"" + coding.replaceAll("[^ -~]", "?")
                + "\", but only plain integers, floats, A-law and mu-law are read from an AIFF file", FileFault.CONVERT);
        };
        if (found == null) {
            throw new FileFault(SoundTrouble.FILE_BROKEN, "its AIFF header is broken (bitsPerSample=" + bits + " with coding \"" + coding + "\")",
                FileFault.EXPORT_AGAIN);
        }
        return found;
    }

    /** Samples of any number of bits stand in the high bits of whole bytes. */
    private PcmCoding integer(boolean bigEndian) {
        return switch ((bits + 7) / 8) {
            case 1 -> PcmCoding.SIGNED_8;
            case 2 -> bigEndian ? PcmCoding.SIGNED_16_BIG : PcmCoding.SIGNED_16_LITTLE;
            case 3 -> bigEndian ? PcmCoding.SIGNED_24_BIG : PcmCoding.SIGNED_24_LITTLE;
            case 4 -> bigEndian ? PcmCoding.SIGNED_32_BIG : PcmCoding.SIGNED_32_LITTLE;
            default -> null;
        };
    }
}
