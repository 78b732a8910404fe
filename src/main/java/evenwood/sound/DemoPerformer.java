package evenwood.sound;

import java.util.List;
import java.util.OptionalLong;

/**
 * A take without an instrument: a modelled octave mandolin with a bridge piezo, played for about a minute, with the
 * faults of the scenario. For a first look, for machines without an input, and for tests.
 *
 * <p>Out: mono float, the same samples for the same rate, seed and scenario, whatever the block size. Any rate from 8 to
 * 192 kHz; octave levels up to 1 kHz agree between rates within 1 dB.
 * <p>How: {@link DemoScore} writes, {@link DemoInstrument} plays, {@link DemoChain} spoils.
 * <p>Thread: one reader. {@link #read} never allocates and never waits.
 */
public final class DemoPerformer implements SoundSource {
    /** Brings the hardest strum to {@link DemoChain#HARDEST_DBFS}; measured (DemoPerformerTest). */
    private static final double PICKUP_GAIN = 0.094;
    /** Counted in the take, not in blocks, so that the block size cannot change a sample. */
    private static final int SETTLE_FRAMES = 1024;

    private final SoundFormat format;
    private final DemoScenario scenario;
    private final DemoInstrument instrument;
    private final DemoChain chain;
    private final long lengthFrames;
    private long frame;

    public DemoPerformer(int sampleRateHz, long seed, DemoScenario scenario) {
        format = SoundFormat.mono(sampleRateHz);
        this.scenario = scenario;
        List<DemoNote> notes = DemoScore.of(seed);
        instrument = new DemoInstrument(sampleRateHz, seed, notes);
        chain = new DemoChain(sampleRateHz, seed, scenario);
        lengthFrames = Math.round(DemoScore.lengthSeconds(notes) * sampleRateHz);
    }

    /** Where its parts begin, in seconds: quiet, soft, usual, hard, tune. */
    public static List<Double> partStartsSeconds(long seed) {
        return DemoScore.partStartsSeconds(seed);
    }

    @Override
    public SoundFormat format() {
        return format;
    }

    @Override
    public OptionalLong lengthFrames() {
        return OptionalLong.of(lengthFrames);
    }

    @Override
    public String name() {
        return scenario.title();
    }

    @Override
    public int read(AudioBlock block) {
        int frames = (int) Math.min(block.capacityFrames(), lengthFrames - frame);
        if (frames <= 0) {
            return -1;
        }
        float[] samples = block.samples();
        for (int i = 0; i < frames; i++) {
            samples[i] = chain.next(PICKUP_GAIN * instrument.next(frame + i));
            if ((frame + i) % SETTLE_FRAMES == 0) {
                instrument.settle();
                chain.settle();
            }
        }
        block.set(frame, frames);
        frame += frames;
        return frames;
    }

    /** Nothing to give back. */
    @Override
    public void close() { }
}
