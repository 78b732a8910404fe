package evenwood.evaluate;

import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.eq.EqProcessor;
import evenwood.judge.Fault;
import evenwood.judge.ToneComparison;
import evenwood.judge.ToneRegion;
import evenwood.measure.TakeReadings;
import evenwood.rig.Instrument;
import evenwood.rig.Tap;
import evenwood.sound.SoundFormat;
import evenwood.takes.Heard;
import evenwood.takes.PackagedTakes;
import evenwood.takes.Take;
import evenwood.targets.HeldOutTargets;
import evenwood.targets.SourceTone;
import evenwood.targets.TargetVoices;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

/**
 * Takes with and without tone faults, each beside a target made without its own source.
 *
 * <p>Clean: a soundcheck, a low, a high and a hard-played take of every voice. Faults go into the sound as EQ: the soundcheck
 * and one of the others, two recipes a fault in turn. The recipes' frequencies and widths are not those the judge has in
 * its table.
 */
final class ToneExamples {
    private static final int RATE_HZ = Take.USUAL_SAMPLE_RATE_HZ;
    private static final SoundFormat FORMAT = new SoundFormat(RATE_HZ, 1, 1, 24);
    private static final int[] CLEAN_PHRASES = {0, 3, 4, 5};
    private static final double ROOM_DBFS = -85;

    /** @param fault empty for a clean take  @param amountDb 0 for a clean take */
    record Example(TargetVoices voice, int phrase, Optional<ToneRegion> fault, double amountDb, TakeReadings readings, ToneComparison comparison) {
        boolean isClean() {
            return fault.isEmpty();
        }

        boolean has(ToneRegion region) {
            return fault.filter(region::equals).isPresent();
        }
    }

    private ToneExamples() { }

    static List<Example> all(double... amountsDb) {
        HeldOutTargets targets = new HeldOutTargets();
        List<TargetVoices> voices = targets.voices();
        AtomicInteger done = new AtomicInteger();
        return IntStream.range(0, voices.size()).parallel().boxed()
            .flatMap(number -> ofVoice(voices.get(number), number, targets.without(voices.get(number)), amountsDb).stream()).toList();
    }

    private static List<Example> ofVoice(TargetVoices voice, int number, Instrument instrument, double... amountsDb) {
        List<Example> examples = new ArrayList<>();
        List<Take> phrases = SourceTone.phrases(voice);
        for (int place = 0; place < CLEAN_PHRASES.length; place++) {
            int phrase = CLEAN_PHRASES[place];
            float[] samples = PackagedTakes.samples(phrases.get(phrase).withRoom(ROOM_DBFS, number));
            example(voice, phrase, Optional.empty(), 0, samples, instrument).ifPresent(examples::add);
            if (place == 0 || place == 1 + number % 3) {
                for (ToneRegion region : ToneRegion.values()) {
                    for (double amountDb : amountsDb) {
                        float[] faulty = samples.clone();
                        EqFilter filter = recipe(region, instrument.lowestHz(), amountDb, (number + place) % 2 == 0);
                        new EqProcessor(new EqChain(0, List.of(filter)), RATE_HZ).process(faulty, faulty.length);
                        example(voice, phrase, Optional.of(region), amountDb, faulty, instrument).ifPresent(examples::add);
                    }
                }
            }
        }
        return examples;
    }

    private static Optional<Example> example(TargetVoices voice, int phrase, Optional<ToneRegion> fault, double amountDb, float[] samples,
                                             Instrument instrument) {
        TakeReadings readings = Heard.readings(samples, FORMAT);
        return ToneComparison.withInstrument(readings, instrument, Tap.PICKUP)
            .map(comparison -> new Example(voice, phrase, fault, amountDb, readings, comparison));
    }

    /** The fault as a player's chain would make it. */
    private static EqFilter recipe(ToneRegion region, double lowestHz, double db, boolean first) {
        double bassHz = Math.max(110, 1.2 * lowestHz);
        return switch (region) {
            case BOOMY -> first ? EqFilter.peak(bassHz, 0.9, db) : EqFilter.lowShelf(1.7 * bassHz, 0.7, db);
            case BOXY -> first ? EqFilter.peak(420, 1, db) : EqFilter.peak(510, 1.4, db);
            case NASAL -> first ? EqFilter.peak(900, 1, db) : EqFilter.peak(1150, 1.4, db);
            case HARSH -> first ? EqFilter.peak(3000, 1, db) : EqFilter.peak(3700, 0.8, db);
            case THIN -> first ? EqFilter.lowShelf(2 * bassHz, 0.7, -db) : EqFilter.lowShelf(2.4 * bassHz, 0.6, -db);
            case DULL -> first ? EqFilter.highShelf(3000, 0.7, -db) : EqFilter.highShelf(4200, 0.7, -db);
        };
    }

    static boolean named(Iterable<evenwood.judge.Finding> findings, Fault fault) {
        for (evenwood.judge.Finding finding : findings) {
            if (finding.fault() == fault) {
                return true;
            }
        }
        return false;
    }
}
