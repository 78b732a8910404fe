package evenwood.sound;

import java.io.IOException;

/**
 * What stands at the beginning of a FLAC frame.
 *
 * <p>Source: RFC 9639, 9.1. What the header leaves to the stream description is taken from there. Its own check sum
 * (CRC-8) is not looked at, because that of the whole frame covers it.
 *
 * @param number     of this frame, or of its first sample where block sizes vary
 * @param channelWay 0 to 7: so many channels and one more, by themselves; 8 left and side, 9 side and right, 10 mid and side
 */
record FlacFrameHeader(int frames, int sampleRateHz, int channelWay, int bitsPerSample, boolean variable, long number) {
    private static final int SYNC_AND_RESERVED = 0xFFF8 >> 1;
    private static final int LEFT_AND_SIDE = 8;
    private static final int MID_AND_SIDE = 10;
    private static final int[] RATES_HZ = {0, 88_200, 176_400, 192_000, 8_000, 16_000, 22_050, 24_000, 32_000, 44_100, 48_000,
        96_000};
    private static final int[] BITS = {0, 8, 12, -1, 16, 20, 24, 32};

    static FlacFrameHeader read(FlacBits bits, FlacStream stream) throws IOException {
        if (bits.bits(15) != SYNC_AND_RESERVED) {
            throw FlacDecoder.damaged();
        }
        boolean variable = bits.bits(1) == 1;
        int sizeCode = (int) bits.bits(4);
        int rateCode = (int) bits.bits(4);
        int channelWay = (int) bits.bits(4);
        int bitsPerSample = BITS[(int) bits.bits(3)];
        if (bits.bits(1) != 0 || sizeCode == 0 || rateCode == 15 || channelWay > MID_AND_SIDE || bitsPerSample < 0) {
            throw FlacDecoder.damaged();
        }
        long number = number(bits);
        int frames = frames(bits, sizeCode);
        int sampleRateHz = sampleRateHz(bits, rateCode);
        bits.bits(8);
        return new FlacFrameHeader(frames, sampleRateHz == 0 ? stream.sampleRateHz() : sampleRateHz, channelWay,
            bitsPerSample == 0 ? stream.bitsPerSample() : bitsPerSample, variable, number);
    }

    int channels() {
        return channelWay < LEFT_AND_SIDE ? channelWay + 1 : 2;
    }

    /** The difference of two channels needs one bit more than either. */
    int bitsOf(int channel) {
        boolean side = channelWay >= LEFT_AND_SIDE && channel == (channelWay == 9 ? 0 : 1);
        return bitsPerSample + (side ? 1 : 0);
    }

    /** A number written like UTF-8, in up to seven bytes. */
    private static long number(FlacBits bits) throws IOException {
        long first = bits.bits(8);
        int more = 0;
        while (more < 8 && (first << more & 0x80) != 0) {
            more++;
        }
        if (more == 1 || more == 8) {
            throw FlacDecoder.damaged();
        }
        long value = more == 0 ? first : first & 0x7F >> more;
        for (int i = 1; i < more; i++) {
            value = value << 6 | bits.bits(8) & 0x3F;
        }
        return value;
    }

    private static int frames(FlacBits bits, int code) throws IOException {
        return switch (code) {
            case 1 -> 192;
            case 2, 3, 4, 5 -> 144 << code;
            case 6 -> (int) bits.bits(8) + 1;
            case 7 -> (int) bits.bits(16) + 1;
            default -> 1 << code;
        };
    }

    private static int sampleRateHz(FlacBits bits, int code) throws IOException {
        return switch (code) {
            case 12 -> 1000 * (int) bits.bits(8);
            case 13 -> (int) bits.bits(16);
            case 14 -> 10 * (int) bits.bits(16);
            default -> RATES_HZ[code];
        };
    }
}
