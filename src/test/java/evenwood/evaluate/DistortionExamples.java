package evenwood.evaluate;

import evenwood.measure.Blocks;
import evenwood.measure.DistortionMeter;
import evenwood.measure.DistortionReading;
import evenwood.measure.HopGrid;
import evenwood.sound.SoundFormat;
import evenwood.takes.Dynamics;
import evenwood.takes.Injected;
import evenwood.takes.Overdrive;
import evenwood.takes.PackagedTakes;
import evenwood.takes.PhraseKind;
import evenwood.takes.SampledBank;
import evenwood.takes.Take;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Takes the distortion model was not fitted on: the banks kept apart ({@link TrainingTakes}), other performances, stages
 * of the fault injection instead of the training's curves.
 */
final class DistortionExamples {
    private static final double[] DRIVES_DB = {1, 2, 3, 6, 10};
    private static final int CLEAN_EACH = 2;

    private final List<DistortionExample> examples = new ArrayList<>();
    private final SplittableRandom random = new SplittableRandom(77);

    static List<DistortionExample> all() {
        DistortionExamples made = new DistortionExamples();
        PackagedTakes.catalogue().stream()
            .filter(take -> take.voice().bank() == SampledBank.MUSESCORE || take.voice().bank() == SampledBank.FREEPATS).forEach(made::of);
        return made.examples;
    }

    private void of(Take take) {
        for (Take clean : List.of(take, take.playing(Dynamics.HARD, PhraseKind.STRUM, PhraseKind.MELODY, PhraseKind.SCALE),
            take.playing(List.of(PhraseKind.LONG_NOTES, PhraseKind.LONG_NOTES), List.of(Dynamics.USUAL, Dynamics.HARD)))) {
            float[] played = PackagedTakes.samples(clean);
            for (int i = 0; i < CLEAN_EACH; i++) {
                clean(clean, played);
            }
        }
        float[] played = PackagedTakes.samples(take);
        for (StageKind kind : StageKind.values()) {
            for (int i = 0; i < kind.amountsEach(); i++) {
                driven(take, played, kind, DRIVES_DB[random.nextInt(DRIVES_DB.length)]);
            }
        }
    }

    private void clean(Take take, float[] played) {
        PickupChain chain = new PickupChain(random.nextLong(), take.sampleRateHz());
        float[] out = chain.after(chain.before(played));
        examples.add(new DistortionExample(take.instrument().id(), StageKind.CLEAN, 0, 0, Double.NaN, read(out, take.sampleRateHz(), chain.bits())));
    }

    private void driven(Take take, float[] played, StageKind kind, double driveDb) {
        PickupChain chain = new PickupChain(random.nextLong(), take.sampleRateHz());
        float[] in = chain.before(played);
        int converterBits = random.nextBoolean() ? 16 : 24;
        Injected<Overdrive.Truth> driven = kind.drive(in, take.sampleRateHz(), driveDb, converterBits);
        boolean converter = kind == StageKind.CONVERTER;
        float[] reference = converter ? PackagedTakes.withPeak(in.clone(), driveDb) : in;
        double shortDb = HardestPlaying.shortDb(reference, driven.samples());
        float[] out = converter ? driven.samples() : chain.after(driven.samples());
        DistortionReading reading = read(out, take.sampleRateHz(), converter ? converterBits : chain.bits());
        if (converter && reading.clippedSamples() > 0 && reading.clippedSamples() != driven.truth().clippedSamples()) {
            throw new AssertionError(take + ": " + reading.clippedSamples() + " clipped samples told, but there are " + driven.truth().clippedSamples());
        }
        examples.add(new DistortionExample(take.instrument().id(), kind, driveDb, shortDb, driven.truth().onsetDbfs() + (converter ? 0 : chain.gainDb()), reading));
    }

    private static DistortionReading read(float[] samples, int sampleRateHz, int bits) {
        DistortionMeter meter = new DistortionMeter(new SoundFormat(sampleRateHz, 1, 1, bits), new HopGrid(sampleRateHz), 4000);
        Blocks.feed(samples, meter::accept);
        return meter.reading();
    }
}
