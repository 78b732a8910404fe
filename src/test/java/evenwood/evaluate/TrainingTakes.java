package evenwood.evaluate;

import evenwood.takes.Dynamics;
import evenwood.takes.PackagedTakes;
import evenwood.takes.PhraseKind;
import evenwood.takes.PlayedInstrument;
import evenwood.takes.SampledBank;
import evenwood.takes.Take;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * What the distortion model is fitted on: every instrument of two of the banks and single recorded notes, in performances of their own, clean
 * and driven into each kind of stage by amounts from just audible up, hard and usual playing in each take. The other
 * banks are kept for the evaluation.
 */
public final class TrainingTakes {
    private static final double[] SHORT_DB = {1, 1.5, 2, 3, 6, 10};
    private static final int ROUNDS = 2;
    private static final int PERFORMANCES = 2;
    private static final int RECORDED_PERFORMANCES = 4;
    private static final int CLEAN_EACH = 2;
    private static final int DRIVEN_EACH = 5;
    private static final int FIRST_SEED = 50_000;
    private static final List<PlayedInstrument> RECORDED = List.of(PlayedInstrument.STEEL_STRING_GUITAR, PlayedInstrument.NYLON_STRING_GUITAR,
        PlayedInstrument.LEVER_HARP, PlayedInstrument.VIOLIN, PlayedInstrument.CELLO, PlayedInstrument.DOUBLE_BASS_BOWED);

    private TrainingTakes() { }

    /** Hears one example. @param curve null for a clean one */
    @FunctionalInterface
    public interface Listener {
        void example(SampledBank bank, float[] samples, int sampleRateHz, int bits, TrainingCurve curve, double shortDb);
    }

    public static void each(Listener listener) {
        int seed = FIRST_SEED;
        for (int round = 0; round < ROUNDS; round++) {
            for (PlayedInstrument instrument : PlayedInstrument.values()) {
                for (PlayedInstrument.Voice voice : instrument.voices()) {
                    for (int i = 0; i < PERFORMANCES && (voice.bank() == SampledBank.TIM || voice.bank() == SampledBank.CSOUND); i++) {
                        examples(instrument, voice, seed++, listener);
                    }
                }
            }
        }
        for (PlayedInstrument instrument : RECORDED) {
            PlayedInstrument.Voice voice = new PlayedInstrument.Voice(SampledBank.RECORDED_NOTES, 0, instrument.voices().get(0).program());
            for (int i = 0; i < RECORDED_PERFORMANCES; i++) {
                examples(instrument, voice, seed++, listener);
            }
        }
    }

    private static Take performance(PlayedInstrument instrument, PlayedInstrument.Voice voice, int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<PhraseKind> kinds = new ArrayList<>();
        List<Dynamics> dynamics = new ArrayList<>();
        int phrases = random.nextInt(3, 7);
        for (int i = 0; i < phrases; i++) {
            kinds.add(PhraseKind.values()[random.nextInt(PhraseKind.values().length)]);
            dynamics.add(i == 0 ? Dynamics.HARD : i == 1 ? Dynamics.USUAL : Dynamics.values()[random.nextInt(Dynamics.values().length)]);
        }
        java.util.Collections.shuffle(dynamics, new java.util.Random(seed));
        return Take.soundcheck(instrument, voice, seed).playing(kinds, dynamics);
    }

    private static void examples(PlayedInstrument instrument, PlayedInstrument.Voice voice, int seed, Listener listener) {
        Take take = performance(instrument, voice, seed);
        SplittableRandom random = new SplittableRandom(seed);
        float[] played = PackagedTakes.samples(take);
        for (int i = 0; i < CLEAN_EACH + DRIVEN_EACH; i++) {
            PickupChain chain = new PickupChain(random.nextLong(), take.sampleRateHz());
            float[] in = chain.before(played);
            TrainingCurve curve = i < CLEAN_EACH ? null : TrainingCurve.values()[random.nextInt(TrainingCurve.values().length)];
            double shortDb = curve == null ? 0 : SHORT_DB[random.nextInt(SHORT_DB.length)];
            float[] out = chain.after(curve == null ? in : curve.drive(in, shortDb));
            listener.example(voice.bank(), out, take.sampleRateHz(), chain.bits(), curve, shortDb);
        }
    }
}
