package evenwood.eq;

import evenwood.sound.AudioBlock;
import evenwood.sound.SoundSource;
import evenwood.sound.WavWriter;

/**
 * How loud a take goes out, behind an equaliser and beside itself: never over the ceiling, and equally loud when the two are
 * to be compared, because the louder one always seems the better.
 *
 * <p>How: loudness of ITU-R BS.1770 (gated), true peak of its Annex 2. The ceiling is −1 dBTP: the highest peak that
 * EBU R 128 permits. If either of two versions would pass it, both are turned down by the same amount.
 *
 * @param beforeDb     gain for the take as it was
 * @param afterDb      gain for the take with the moves, beside the moves' own
 * @param turnedDownDb what was taken off so that no peak passes the ceiling; 0 when none would
 */
public record Rendering(double beforeDb, double afterDb, double turnedDownDb) {
    public static final double CEILING_DBTP = -1;
    private static final int BLOCK_FRAMES = 4096;

    /** The moves with all their gain. */
    public static Rendering asMoved(EqualisedTake after) {
        double down = Math.max(0, after.truePeakDbtp() - CEILING_DBTP);
        return new Rendering(0, -down, down);
    }

    /** Both equally loud, as loud as the take was; what gain the moves have does not count. */
    public static Rendering matched(EqualisedTake before, EqualisedTake after) {
        double match = Double.isFinite(before.integratedLufs()) && Double.isFinite(after.integratedLufs())
            ? before.integratedLufs() - after.integratedLufs() : 0;
        double highest = Math.max(before.truePeakDbtp(), after.truePeakDbtp() + match);
        double down = Math.max(0, highest - CEILING_DBTP);
        return new Rendering(-down, match - down, down);
    }

    /** Sends the whole source through a chain with some more gain, into a file. */
    public static void write(SoundSource source, EqChain change, double gainDb, WavWriter writer) {
        EqProcessor processor = new EqProcessor(change.withGainDb(change.gainDb() + gainDb), source.format().sampleRateHz());
        AudioBlock block = new AudioBlock(BLOCK_FRAMES);
        while (source.read(block) >= 0) {
            processor.process(block);
            writer.write(block);
        }
    }
}
