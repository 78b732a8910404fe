package evenwood.sound;

import java.io.IOException;

/**
 * What a WAV file's {@code fmt} chunk says of its samples.
 *
 * @param validBits of an integer, the highest ones; 0 when not said
 */
record WavSampleFormat(long sampleRateHz, int channels, PcmCoding coding, int validBits) {
    private static final int PCM = 1;
    private static final int IEEE_FLOAT = 3;
    private static final int A_LAW = 6;
    private static final int MU_LAW = 7;
    private static final int EXTENSIBLE = 0xFFFE;
    /** Where the real tag stands in an extensible chunk, which is 40 bytes long. */
    private static final int EXTENSIBLE_BYTES = 40;

    static WavSampleFormat read(FileBytes bytes, long size) throws IOException {
        int tag = bytes.u16LittleEndian();
        int channels = bytes.u16LittleEndian();
        long sampleRateHz = bytes.u32LittleEndian();
        bytes.u32LittleEndian();
        int blockAlign = bytes.u16LittleEndian();
        int bits = bytes.u16LittleEndian();
        int validBits = bits;
        if (tag == EXTENSIBLE && size >= EXTENSIBLE_BYTES) {
            bytes.u16LittleEndian();
            validBits = bytes.u16LittleEndian();
            bytes.u32LittleEndian();
            tag = bytes.u16LittleEndian();
        }
        FrameShape.check(sampleRateHz, channels);
        return new WavSampleFormat(sampleRateHz, channels, coding(tag, bits, channels, blockAlign), validBits);
    }

    PcmStretch stretch(long firstByte, long bytes) {
        return new PcmStretch(sampleRateHz, channels, coding, validBits, firstByte, bytes, PcmStretch.TO_THE_END);
    }

    private static PcmCoding coding(int tag, int bits, int channels, int blockAlign) throws FileFault {
        int container = blockAlign % channels == 0 ? blockAlign / channels : 0;
        PcmCoding coding = switch (tag) {
            case PCM -> integer(container);
            case IEEE_FLOAT -> container == 4 ? PcmCoding.FLOAT_32_LITTLE : container == 8 ? PcmCoding.FLOAT_64_LITTLE : null;
            case A_LAW -> container == 1 ? PcmCoding.A_LAW : null;
            case MU_LAW -> container == 1 ? PcmCoding.MU_LAW : null;
            default -> throw new FileFault(SoundTrouble.FILE_CODING, "its samples are coded as " + codecName(tag)
                + ", but only plain integers, floats, A-law and mu-law are read from a WAV file", FileFault.CONVERT);
        };
        if (coding == null || bits < 1 || bits > 8 * container) {
            throw new FileFault(SoundTrouble.FILE_BROKEN, "its WAV header is broken (channels=" + channels + ", blockAlign=" + blockAlign
                + ", bitsPerSample=" + bits + " do not fit together)", FileFault.EXPORT_AGAIN);
        }
        return coding;
    }

    private static PcmCoding integer(int container) {
        return switch (container) {
            case 1 -> PcmCoding.UNSIGNED_8;
            case 2 -> PcmCoding.SIGNED_16_LITTLE;
            case 3 -> PcmCoding.SIGNED_24_LITTLE;
            case 4 -> PcmCoding.SIGNED_32_LITTLE;
            default -> null;
        };
    }

    /** The coded kinds one meets, by the registered tags (common practice); others by number. */
    private static String codecName(int tag) {
        return switch (tag) {
            case 0x02 -> "Microsoft ADPCM";
            case 0x11 -> "IMA ADPCM";
            case 0x31 -> "GSM 6.10";
            case 0x50, 0x55 -> "MPEG audio";
            case 0x92 -> "AC-3";
            case 0x161, 0x162 -> "Windows Media audio";
            default -> String.format("format tag 0x%04X", tag);
        };
    }
}
