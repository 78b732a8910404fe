package evenwood.sound;

/**
 * The four bytes that begin every MPEG audio frame.
 *
 * <p>Source of the tables: ISO/IEC 11172-3, 2.4.2.3 and ISO/IEC 13818-3, 2.4.2.3, from memory; MPEG 2.5 (halved rates) is
 * common practice. Checked against files written by lame and ffmpeg at all nine sample rates (SoundFilesReferenceTest).
 *
 * @param version   1, 2, or 25 for MPEG 2.5
 * @param layer     1, 2 or 3
 * @param sizeBytes of the whole frame, with this header
 */
record Mp3FrameHeader(int version, int layer, int sampleRateHz, int channels, int sizeBytes) {
    private static final int SYNC = 0xFFE0_0000;
    private static final int[] RATES_HZ = {44_100, 48_000, 32_000};
    private static final int[][] KBITS_VERSION_1 = {
        {32, 64, 96, 128, 160, 192, 224, 256, 288, 320, 352, 384, 416, 448},
        {32, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320, 384},
        {32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320}};
    private static final int[][] KBITS_VERSION_2 = {
        {32, 48, 56, 64, 80, 96, 112, 128, 144, 160, 176, 192, 224, 256},
        {8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160},
        {8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160}};

    /** The header in these 32 bits, or null if they are none; the free format, which has no sizes, counts as none. */
    static Mp3FrameHeader of(int bits) {
        int versionCode = bits >>> 19 & 3;
        int layer = 4 - (bits >>> 17 & 3);
        int rateCode = bits >>> 10 & 3;
        int bitrateCode = bits >>> 12 & 15;
        if ((bits & SYNC) != SYNC || versionCode == 1 || layer == 4 || rateCode == 3 || bitrateCode == 0 || bitrateCode == 15) {
            return null;
        }
        int version = versionCode == 3 ? 1 : versionCode == 2 ? 2 : 25;
        int sampleRateHz = RATES_HZ[rateCode] / (version == 1 ? 1 : version == 2 ? 2 : 4);
        int kbits = (version == 1 ? KBITS_VERSION_1 : KBITS_VERSION_2)[layer - 1][bitrateCode - 1];
        int padding = bits >>> 9 & 1;
        int sizeBytes = layer == 1 ? 4 * (12_000 * kbits / sampleRateHz + padding)
            : frames(version, layer) / 8 * 1000 * kbits / sampleRateHz + padding;
        return new Mp3FrameHeader(version, layer, sampleRateHz, (bits >>> 6 & 3) == 3 ? 1 : 2, sizeBytes);
    }

    private static int frames(int version, int layer) {
        return layer == 1 ? 384 : layer == 3 && version != 1 ? 576 : 1152;
    }

    /** How many sound frames one coded frame gives. */
    int frames() {
        return frames(version, layer);
    }

    /** Whether both can belong to one recording; mono and stereo may alternate in it. */
    boolean goesWith(Mp3FrameHeader other) {
        return other != null && version == other.version && layer == other.layer && sampleRateHz == other.sampleRateHz;
    }

    /** Where a Xing, Info or VBRI note may stand in the first frame: behind the side information. */
    int noteOffset() {
        int sideBytes = version == 1 ? channels == 1 ? 17 : 32 : channels == 1 ? 9 : 17;
        return 4 + sideBytes;
    }
}
