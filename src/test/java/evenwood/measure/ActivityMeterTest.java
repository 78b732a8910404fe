package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ActivityMeterTest {
    private static final int RATE = 48_000;

    @Test
    void hissAloneIsNeverPlaying() {
        for (double level : new double[] {-20, -45, -90}) {
            ActivityReading reading = read(new SoundSketch(RATE, 30, 1).hiss(level));
            assertThat(reading.playingSeconds()).as("hiss at %s dBFS", level).isZero();
            assertThat(reading.quietSeconds()).isGreaterThan(28);
            assertThat(reading.floorDbfs()).isCloseTo(level, within(0.1));
        }
    }

    @Test
    void humAloneIsNeverPlaying() {
        for (double hz : new double[] {49.93, 60.04}) {
            ActivityReading reading = read(new SoundSketch(RATE, 30, 2).hum(hz, -30).hiss(-80));
            assertThat(reading.playingSeconds()).as("hum of %s Hz", hz).isZero();
            assertThat(reading.quietSeconds()).isGreaterThan(28);
            assertThat(reading.floorDbfs()).isCloseTo(-30, within(0.2));
        }
    }

    @Test
    void softPlayingBarelyAboveLoudHumIsPlaying() {
        SoundSketch sketch = new SoundSketch(RATE, 24, 3).hum(50, -50).hiss(-75);
        for (int i = 0; i < 8; i++) {
            sketch.pluck(2 + 2 * i, 1.2, 196 * Math.pow(2, i / 12.0), -40, 15);
        }
        assertPlucks(read(sketch), 8, 2, 2, 0.8);
    }

    @Test
    void veryQuietPlayingOverALowFloorIsPlaying() {
        SoundSketch sketch = new SoundSketch(RATE, 24, 4).hiss(-75);
        for (int i = 0; i < 8; i++) {
            sketch.pluck(2 + 2 * i, 1.0, 330 * Math.pow(2, i / 12.0), -50, 12);
        }
        assertPlucks(read(sketch), 8, 2, 2, 0.5);
    }

    @Test
    void notesBetweenDigitalSilenceArePlayingAndTheSilenceIsQuiet() {
        SoundSketch sketch = new SoundSketch(RATE, 24, 5);
        for (int i = 0; i < 8; i++) {
            sketch.pluck(2 + 2 * i, 1.0, 110 * Math.pow(2, i / 6.0), -12, 10);
        }
        ActivityReading reading = read(sketch);
        assertPlucks(reading, 8, 2, 2, 0.9);
        assertThat(reading.floorDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    @Test
    void aTakeWithoutAnyRestHasNoQuietAndItsFloorIsAnUpperBound() {
        SoundSketch sketch = new SoundSketch(RATE, 20, 6).hiss(-70);
        for (int i = 0; i < 66; i++) {
            double root = 98 * Math.pow(2, (i / 8 * 5 % 12) / 12.0);
            for (double ratio : new double[] {1, 1.5, 2, 2.52, 3}) {
                sketch.pluck(0.3 * i, 1.5, root * ratio, -20 - i % 3 * 3, 12);
            }
        }
        ActivityReading reading = read(sketch);
        assertThat(reading.hasQuiet()).isFalse();
        assertThat(reading.floorDbfs()).isGreaterThan(-70);
        assertThat(reading.playingSeconds()).isGreaterThan(18.5);
    }

    @Test
    void bowedNotesWithoutAnyRestHaveNoQuiet() {
        SoundSketch sketch = new SoundSketch(RATE, 32, 7).hiss(-70);
        int[] steps = {0, 2, 4, 5, 7, 9, 11, 12};
        for (int i = 0; i < 16; i++) {
            sketch.bow(2.0 * i, 2.03, 196 * Math.pow(2, steps[i % 8] / 12.0), -15);
        }
        ActivityReading reading = read(sketch);
        assertThat(reading.quietSeconds()).isZero();
        assertThat(reading.playingSeconds()).isGreaterThan(30);
    }

    @Test
    void aLongBowedNoteIsPlayingAllThrough() {
        ActivityReading reading = read(new SoundSketch(RATE, 14, 8).hiss(-60).hum(60, -65).bow(3, 8, 220, -20));
        assertThat(reading.playingSeconds()).isCloseTo(8, within(0.2));
        assertThat(reading.quietSeconds()).isCloseTo(6, within(0.6));
    }

    @Test
    void clicksInTheRestsAreNotPlaying() {
        SoundSketch sketch = new SoundSketch(RATE, 20, 9).hiss(-75).hum(50, -60);
        for (int i = 0; i < 12; i++) {
            sketch.click(1.03 + 1.517 * i, -30 + i);
        }
        ActivityReading reading = read(sketch);
        assertThat(reading.playingSeconds()).isZero();
        assertThat(reading.quietSeconds()).isGreaterThan(14);
    }

    @Test
    void aSlowDecayIsNeverQuietBeforeItReachesTheFloor() {
        // −14 dB at the start, 8 dB a second: the fundamental crosses the −66 dBFS hiss after about 6.5 s.
        ActivityReading reading = read(new SoundSketch(RATE, 16, 10).hiss(-66).pluck(3, 13, 98, -12, 8));
        long start = (long) (3 / reading.grid().hopSeconds());
        for (long hop = start; hop < start + 6 / reading.grid().hopSeconds(); hop++) {
            assertThat(reading.isQuiet(hop)).as("hop %d", hop).isFalse();
        }
        assertThat(reading.playingSeconds()).isBetween(4.0, 11.0);
    }

    @Test
    void lessThanASecondIsNotDecided() {
        ActivityReading reading = read(new SoundSketch(RATE, 0.3, 11).hiss(-50));
        assertThat(reading.playingSeconds()).isZero();
        assertThat(reading.quietSeconds()).isZero();
    }

    @Test
    void aGainKnobTurnedInMidTakeMakesNoPlaying() {
        SoundSketch sketch = new SoundSketch(RATE, 30, 14).hiss(-72).hum(50, -62);
        for (int i = 0; i < 12; i++) {
            sketch.pluck(2 + 2 * i + i / 6 * 2, 1.0, 196 * Math.pow(2, i / 12.0), -30, 15);
        }
        double up = Math.pow(10, 12 / 20.0);
        for (int i = 15 * RATE; i < sketch.samples.length; i++) {
            sketch.samples[i] *= (float) Math.min(up, 1 + (up - 1) * (i - 15 * RATE) / (0.3 * RATE));
        }
        ActivityReading reading = read(sketch);
        assertPlucks(reading, 6, 2, 2, 0.8);
        assertPlucks(reading, 6, 16, 2, 0.8);
        assertThat(reading.playingSeconds()).isLessThan(12 * 1.15 + 0.5);
    }

    @Test
    void humThatChangesWithTheHandIsNotPlaying() {
        // Hands on the strings for 4 s, off for 4 s, and so on: 12 dB more hum. Nobody plays.
        SoundSketch touched = new SoundSketch(RATE, 32, 15).hiss(-75).hum(50, -62);
        SoundSketch away = new SoundSketch(RATE, 32, 15).hiss(-75).hum(50, -50);
        for (int i = 0; i < touched.samples.length; i++) {
            touched.samples[i] = i / (4 * RATE) % 2 == 0 ? touched.samples[i] : away.samples[i];
        }
        ActivityReading reading = read(touched);
        assertThat(reading.playingSeconds()).isLessThan(0.5);
        assertThat(reading.quietSeconds()).isGreaterThan(26);
    }

    @ParameterizedTest
    @ValueSource(ints = {8_000, 11_025, 22_050, 44_100, 96_000, 192_000})
    void everySampleRateTellsPlayingFromHum(int rate) {
        SoundSketch sketch = new SoundSketch(rate, 14, 12).hum(50, -50).hiss(-70);
        for (int i = 0; i < 5; i++) {
            sketch.pluck(2 + 2 * i, 1.0, 220 * Math.pow(2, i / 12.0), -20, 15);
        }
        assertPlucks(read(sketch), 5, 2, 2, 0.9);
    }

    @Test
    void aLiveTakeRemembersOnlyWhatFits() {
        HopGrid grid = new HopGrid(RATE);
        ActivityMeter meter = new ActivityMeter(grid, grid.hopsIn(10));
        SoundSketch sketch = new SoundSketch(RATE, 40, 13).hiss(-60);
        for (int i = 0; i < 15; i++) {
            sketch.pluck(1 + 2 * i, 1, 220, -12, 12);
        }
        sketch.into(meter::accept, 512);
        ActivityReading reading = meter.reading();
        assertThat(reading.states()).hasSize(grid.hopsIn(10));
        assertThat(reading.playingSeconds()).isLessThan(1);
        assertThat(reading.quietSeconds()).isGreaterThan(8);
    }

    private static void assertPlucks(ActivityReading reading, int count, double firstSeconds, double everySeconds,
                                     double soundingSeconds) {
        double hop = reading.grid().hopSeconds();
        for (int i = 0; i < count; i++) {
            double start = firstSeconds + i * everySeconds;
            for (double t = start + 0.15; t < start + soundingSeconds - 0.15; t += hop) {
                assertThat(reading.isPlaying((long) (t / hop))).as("note %d playing at %.2f s", i, t).isTrue();
            }
            for (double t = start - 0.5; t < start - 0.15; t += hop) {
                assertThat(reading.isQuiet((long) (t / hop))).as("before note %d quiet at %.2f s", i, t).isTrue();
            }
        }
    }

    private static ActivityReading read(SoundSketch sketch) {
        HopGrid grid = new HopGrid(sketch.sampleRateHz);
        ActivityMeter meter = new ActivityMeter(grid, grid.hopsIn(60));
        sketch.into(meter::accept, 512);
        return meter.reading();
    }
}
