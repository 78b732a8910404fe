package evenwood.sound;

/**
 * Where a file's uncompressed samples lie and how they are written, as its header says; nothing here is checked yet.
 *
 * @param validBits  bits of an integer that count, the highest ones; 0 when the header does not say
 * @param firstByte  place of the first sample in the file
 * @param bytes      how many bytes of samples the header claims; {@link #TO_THE_END} when it does not know
 * @param mostFrames how many frames the header claims at most; {@link #TO_THE_END} when it does not say
 */
record PcmStretch(long sampleRateHz, int channels, PcmCoding coding, int validBits, long firstByte, long bytes,
                  long mostFrames) {
    static final long TO_THE_END = Long.MAX_VALUE;
}
