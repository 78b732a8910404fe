package evenwood.evaluate;

import evenwood.eq.EqChain;
import evenwood.judge.Fault;
import evenwood.judge.ToneComparison;
import evenwood.judge.ToneRegion;
import evenwood.measure.TakeReadings;
import evenwood.rig.Instrument;
import evenwood.rig.Tap;
import evenwood.takes.KeptTone;
import evenwood.takes.Take;
import evenwood.targets.HeldOutTargets;
import evenwood.targets.SourceTone;
import evenwood.targets.TargetVoices;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Takes with and without tone faults, each beside a target made without its own source.
 *
 * <p>Clean: a soundcheck, a low, a high and a hard-played take of every voice. Each with every fault: bells and shelves that lie
 * anywhere in the word's region ({@link LikeFault}; the frequencies and widths are not those the judge has in its table), worked
 * out from the clean readings ({@link EqualisedTone}).
 */
final class ToneExamples {
    private static final int[] CLEAN_PHRASES = {0, 3, 4, 5};
    private static final double ROOM_DBFS = -85;

    /**
     * @param source which recordings: voices of one source may stand for several instruments, and none may judge the other
     * @param fault  empty for a clean take  @param amountDb 0 for a clean take  @param words what it may be called
     */
    record Example(TargetVoices voice, String source, int phrase, Optional<ToneRegion> fault, double amountDb, List<Fault> words,
                   TakeReadings readings, ToneComparison comparison) {
        boolean isClean() {
            return fault.isEmpty();
        }

        boolean has(ToneRegion region) {
            return fault.filter(region::equals).isPresent();
        }

        /** Whether the word is right for it. */
        boolean mayBeCalled(ToneRegion region) {
            return words.contains(region.fault());
        }
    }

    private ToneExamples() { }

    static List<Example> all(double... amountsDb) {
        HeldOutTargets targets = new HeldOutTargets();
        List<Example> examples = new ArrayList<>();
        int number = 0;
        for (TargetVoices voice : targets.voices()) {
            Instrument instrument = targets.without(voice);
            SplittableRandom random = new SplittableRandom(number);
            List<Take> phrases = SourceTone.phrases(voice);
            for (int phrase : CLEAN_PHRASES) {
                TakeReadings clean = KeptTone.readings(phrases.get(phrase).withRoom(ROOM_DBFS, number));
                example(voice, phrase, Optional.empty(), 0, List.of(), clean, instrument).ifPresent(examples::add);
                for (ToneRegion region : ToneRegion.values()) {
                    for (double amountDb : amountsDb) {
                        EqChain chain = LikeFault.chain(region.fault(), amountDb, instrument.lowestHz(), random);
                        example(voice, phrase, Optional.of(region), amountDb, LikeFault.words(region.fault(), chain, instrument.lowestHz()),
                            EqualisedTone.of(clean, chain), instrument).ifPresent(examples::add);
                    }
                }
            }
            number++;
        }
        return examples;
    }

    private static Optional<Example> example(TargetVoices voice, int phrase, Optional<ToneRegion> fault, double amountDb, List<Fault> words,
                                             TakeReadings readings, Instrument instrument) {
        String source = voice.voice().toString();
        return ToneComparison.withInstrument(readings, instrument, Tap.PICKUP)
            .map(comparison -> new Example(voice, source, phrase, fault, amountDb, words, readings, comparison));
    }
}
