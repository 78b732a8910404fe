package evenwood.evaluate;

import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.eq.EqProcessor;
import evenwood.judge.BandHz;
import evenwood.judge.Fault;
import evenwood.judge.ToneRegion;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Tone faults put into takes: bells and shelves whose middle and width lie anywhere in the region the word stands for
 * (reference §9.4), boomy and thin where the instrument begins.
 */
final class LikeFault {
    static final List<Fault> ALL = List.of(Fault.BOOMY, Fault.BOXY, Fault.NASAL, Fault.HARSH, Fault.THIN, Fault.DULL);
    private static final double GUITAR_BASS_HZ = 125;
    private static final double OVER_LOWEST_NOTE = 1.25;

    private LikeFault() { }

    static EqChain chain(Fault fault, double amountDb, double lowestHz, SplittableRandom random) {
        double bass = Math.max(GUITAR_BASS_HZ, OVER_LOWEST_NOTE * lowestHz);
        double q = between(random, 0.8, 1.4);
        return EqChain.of(switch (fault) {
            case BOOMY -> EqFilter.peak(bass * between(random, 0.8, 1.25), q, amountDb);
            case BOXY -> EqFilter.peak(between(random, 360, 580), q, amountDb);
            case NASAL -> EqFilter.peak(between(random, 800, 1250), q, amountDb);
            case HARSH -> EqFilter.peak(between(random, 2500, 4200), q, amountDb);
            case THIN -> EqFilter.lowShelf(bass * between(random, 1.6, 2.6), EqFilter.BUTTERWORTH_Q, -amountDb);
            case DULL -> EqFilter.highShelf(between(random, 2500, 5000), EqFilter.BUTTERWORTH_Q, -amountDb);
            default -> throw new IllegalArgumentException("tone fault: " + fault + ", but that is none");
        });
    }

    /** The words for it, the best first: regions overlap, and a bell that lies in two of them may be called by either word. */
    static List<Fault> words(Fault fault, EqChain chain, double lowestHz) {
        List<Fault> words = new ArrayList<>(List.of(fault));
        double hz = chain.filters().get(0).frequencyHz();
        for (ToneRegion region : fault == Fault.THIN || fault == Fault.DULL ? new ToneRegion[0] : ToneRegion.values()) {
            BandHz place = region.bandHz(lowestHz);
            if (region.fault() != fault && region.isExcess() && hz >= place.lowHz() && hz <= place.highHz()) {
                words.add(region.fault());
            }
        }
        return words;
    }

    /** Two bells and a shelf as a player would turn them. */
    static EqChain equaliser(SplittableRandom random) {
        EqFilter shelf = random.nextBoolean() ? EqFilter.lowShelf(between(random, 150, 300), EqFilter.BUTTERWORTH_Q, between(random, -8, 8))
            : EqFilter.highShelf(between(random, 2500, 5000), EqFilter.BUTTERWORTH_Q, between(random, -8, 8));
        return EqChain.of(EqFilter.peak(between(random, 200, 800), between(random, 0.7, 1.5), between(random, -9, 9)),
            EqFilter.peak(between(random, 1000, 4500), between(random, 0.7, 1.5), between(random, -9, 9)), shelf);
    }

    static float[] through(EqChain chain, float[] clean) {
        float[] changed = clean.clone();
        new EqProcessor(chain.withGainDb(-12), LikeSources.RATE_HZ).process(changed, changed.length);
        return changed;
    }

    private static double between(SplittableRandom random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }
}
