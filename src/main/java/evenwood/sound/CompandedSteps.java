package evenwood.sound;

/**
 * The 256 steps of the two telephone codes, A-law and µ-law, as numbers.
 *
 * <p>How: ITU-T G.711: sign, a three-bit segment that doubles the step, four bits within it; A-law inverts every other
 * bit, µ-law all of them and adds a bias of 33. The 13- and 14-bit results stand in 16 bits as is common practice, so
 * the loudest codes are 32256 and 32124 of 32768 (checked against ffmpeg in SoundFilesReferenceTest).
 * <p>Thread: immutable.
 */
final class CompandedSteps {
    static final CompandedSteps A_LAW = new CompandedSteps(true);
    static final CompandedSteps MU_LAW = new CompandedSteps(false);
    private static final int A_LAW_EVERY_OTHER_BIT = 0x55;
    private static final int MU_LAW_BIAS = 33;

    private final float[] steps = new float[256];

    private CompandedSteps(boolean aLaw) {
        for (int code = 0; code < 256; code++) {
            steps[code] = (aLaw ? aLaw(code) : muLaw(code)) / 32768f;
        }
    }

    float sample(byte code) {
        return steps[code & 0xFF];
    }

    private static int aLaw(int code) {
        int bits = code ^ A_LAW_EVERY_OTHER_BIT;
        int segment = bits >> 4 & 7;
        int within = 2 * (bits & 15) + 1;
        int magnitude = segment == 0 ? within : within + 32 << segment - 1;
        return (bits & 0x80) != 0 ? 8 * magnitude : -8 * magnitude;
    }

    private static int muLaw(int code) {
        int bits = ~code & 0xFF;
        int magnitude = (2 * (bits & 15) + MU_LAW_BIAS << (bits >> 4 & 7)) - MU_LAW_BIAS;
        return (bits & 0x80) != 0 ? -4 * magnitude : 4 * magnitude;
    }
}
