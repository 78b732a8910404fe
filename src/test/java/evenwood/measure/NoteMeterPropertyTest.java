package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class NoteMeterPropertyTest {
    private static final int RATE = 16_000;

    static LongStream seeds() {
        return LongStream.range(0, 50);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void blockSizeDoesNotMatter(long seed) {
        float[] sound = Blocks.anySound(seed, RATE, 6);
        int hops = new HopGrid(RATE).hopsIn(6);
        NoteMeter meter = new NoteMeter(new HopGrid(RATE), hops);
        ActivityReading activity = Signals.all(new HopGrid(RATE), hops, ActivityReading.PLAYING);
        Blocks.feedInRandomSizes(sound, seed, meter::accept);
        List<Note> notes = meter.reading(activity).notes();
        DynamicsReading dynamics = meter.dynamics(activity, meter.reading(activity));
        meter.reset();
        Blocks.feed(sound, seed % 10 == 0 ? 1 : 512, meter::accept);
        assertThat(meter.reading(activity).notes()).isEqualTo(notes);
        assertThat(meter.dynamics(activity, meter.reading(activity))).isEqualTo(dynamics);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void gainMovesLevelsAndNothingElse(long seed) {
        float[] sound = Blocks.anySound(seed, RATE, 6);
        double gainDb = -20 + seed / 2.0;
        List<Note> before = NoteScore.read(sound, RATE).notes();
        List<Note> after = NoteScore.read(Blocks.scaled(sound, Math.pow(10, gainDb / 20)), RATE).notes();
        assertThat(after).hasSameSizeAs(before);
        DynamicsReading soft = NoteScore.dynamics(sound, RATE);
        if (soft.isKnown()) { // What is no sound at all stands 150 dB under full scale, not under the playing.
            DynamicsReading loud = NoteScore.dynamics(Blocks.scaled(sound, Math.pow(10, gainDb / 20)), RATE);
            assertThat(loud.softDbfs() - soft.softDbfs()).isCloseTo(gainDb, within(0.02));
            assertThat(loud.usualDbfs() - soft.usualDbfs()).isCloseTo(gainDb, within(0.02));
            assertThat(loud.hardDbfs() - soft.hardDbfs()).isCloseTo(gainDb, within(0.02));
        }
        for (int i = 0; i < before.size(); i++) {
            assertThat(after.get(i).startSeconds()).isEqualTo(before.get(i).startSeconds());
            assertThat(after.get(i).midi()).isEqualTo(before.get(i).midi());
            assertThat(after.get(i).peakDbfs()).isCloseTo(before.get(i).peakDbfs() + gainDb, within(0.001));
            assertThat(after.get(i).levelDbfs()).isCloseTo(before.get(i).levelDbfs() + gainDb, within(0.001));
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void polarityChangesNothing(long seed) {
        float[] sound = Blocks.anySound(seed, RATE, 6);
        assertThat(NoteScore.read(Blocks.scaled(sound, -1), RATE)).isEqualTo(NoteScore.read(sound, RATE));
    }

    @Test
    void silenceHasNoNotes() {
        NotesReading reading = NoteScore.read(new float[RATE], RATE);
        assertThat(NoteScore.dynamics(new float[RATE], RATE)).isEqualTo(DynamicsReading.unknown(0));
        assertThat(reading.notes()).isEmpty();
        assertThat(reading.summaries()).isEmpty();
        assertThat(new NoteMeter(new HopGrid(RATE), 10).reading(Signals.all(new HopGrid(RATE), 0, ActivityReading.PLAYING)).notes()).isEmpty();
    }

    @Test
    void acceptAllocatesNothing() {
        assertThat(Allocation.bytesOf(new NoteMeter(new HopGrid(48_000), 500)::accept)).isZero();
    }
}
