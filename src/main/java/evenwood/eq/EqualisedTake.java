package evenwood.eq;

import evenwood.measure.HopGrid;
import evenwood.measure.LoudnessMeter;
import evenwood.measure.TruePeakMeter;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;

/**
 * Peak and loudness of a whole take behind an equaliser: the take itself goes through, nothing is estimated.
 *
 * @param truePeakDbtp   highest point; −Infinity for silence
 * @param integratedLufs loudness as ITU-R BS.1770 gates it; −Infinity for silence
 */
public record EqualisedTake(double truePeakDbtp, double integratedLufs) {
    private static final int BLOCK_FRAMES = 4096;

    /** Hears the source to its end, or to where it breaks off, and leaves it open. */
    public static EqualisedTake measure(SoundSource source, EqChain change) {
        int rateHz = source.format().sampleRateHz();
        EqProcessor processor = new EqProcessor(change, rateHz);
        TruePeakMeter peak = new TruePeakMeter(new HopGrid(rateHz), 1);
        LoudnessMeter loudness = new LoudnessMeter(rateHz, 1);
        AudioBlock block = new AudioBlock(BLOCK_FRAMES);
        try {
            while (source.read(block) >= 0) {
                processor.process(block);
                peak.accept(block);
                loudness.accept(block);
            }
        } catch (SoundProblem problem) {
            if (!problem.isMidway()) {
                throw problem;
            }
        }
        return new EqualisedTake(peak.reading().truePeakDbtp(), loudness.readingOfFinishedTake().integratedLufs());
    }
}
