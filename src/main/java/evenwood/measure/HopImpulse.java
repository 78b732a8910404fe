package evenwood.measure;

import evenwood.sound.AudioBlock;

/**
 * How much of each hop is one short click.
 *
 * <p>In: mono blocks of any size. Out: per hop the level of the whole hop against the level of the hop without its three
 * loudest sixteenths, in dB: about 0 for steady sound, a few dB for the attack of a note, 10 and more for a click.
 * <p>How: mean squares of the first difference, which all but removes hum (50 Hz is 44 dB down at 48 kHz), in sixteen
 * parts of about 2.7 ms. Source: our choice; a click of a bad contact lasts under 5 ms (common practice).
 * <p>Thread: one owner; {@link #accept} never allocates.
 */
final class HopImpulse {
    static final int PARTS = 16;
    private static final int LOUDEST_LEFT_OUT = 3;

    private final HopHistory history;
    private final int partFrames;
    private final double[] parts = new double[PARTS];
    private int part;
    private int filled;
    private double sum;
    private float previous;

    HopImpulse(HopGrid grid, HopHistory history) {
        this.history = history;
        partFrames = grid.hopFrames() / PARTS;
    }

    void accept(AudioBlock block) {
        float[] in = block.samples();
        int done = 0;
        while (done < block.frames()) {
            int end = Math.min(block.frames(), done + partFrames - filled);
            filled += end - done;
            for (; done < end; done++) {
                double difference = in[done] - previous;
                previous = in[done];
                sum += difference * difference;
            }
            if (filled == partFrames) {
                endPart();
            }
        }
    }

    void reset() {
        part = 0;
        filled = 0;
        sum = 0;
        previous = 0;
    }

    private void endPart() {
        parts[part++] = sum;
        sum = 0;
        filled = 0;
        if (part == PARTS) {
            history.set(history.append(), 0, impulseDb());
            part = 0;
        }
    }

    private float impulseDb() {
        java.util.Arrays.sort(parts);
        double rest = 0;
        for (int i = 0; i < PARTS - LOUDEST_LEFT_OUT; i++) {
            rest += parts[i];
        }
        double whole = rest;
        for (int i = PARTS - LOUDEST_LEFT_OUT; i < PARTS; i++) {
            whole += parts[i];
        }
        double meanOfRest = rest / (PARTS - LOUDEST_LEFT_OUT);
        return whole <= 0 ? 0 : (float) Math.min(99, 10 * Math.log10(whole / PARTS / Math.max(meanOfRest, 1e-30)));
    }
}
