package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.sound.AudioBlock;
import evenwood.sound.DemoPerformer;
import evenwood.sound.DemoScenario;
import evenwood.sound.SoundFormat;
import java.lang.management.ManagementFactory;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** All meters joined, on the demo take. */
class TakeMetersTest {
    @ParameterizedTest
    @ValueSource(ints = {1, 37, 512, 8192})
    void theBlockSizeDoesNotChangeAnyReading(int blockFrames) {
        assertThat(heard(22_050, blockFrames)).usingRecursiveComparison().isEqualTo(heard(22_050, 4096));
    }

    @ParameterizedTest
    @ValueSource(ints = {8000, 11_025, 16_000, 32_000, 44_100, 88_200, 96_000, 176_400, 192_000})
    void everySampleRateIsMeasured(int rateHz) {
        TakeReadings readings = heard(rateHz, 4096);
        assertThat(readings.take().durationSeconds()).isGreaterThan(50);
        assertThat(readings.activity().playingSeconds()).isBetween(35.0, 52.0);
        assertThat(readings.noise().mainsHz()).as("the kitchen hums").isPresent();
        assertThat(readings.noise().mainsHz().getAsDouble()).isBetween(49.9, 50.1);
    }

    @Test
    void hearingAllocatesNothing() {
        TakeMeters meters = new TakeMeters(SoundFormat.mono(48_000), 60);
        DemoPerformer performer = new DemoPerformer(48_000, 3, DemoScenario.kitchen());
        AudioBlock block = new AudioBlock(512);
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long allocated = Long.MAX_VALUE;
        for (int second = 0; second < 50; second++) {
            long before = threads.getCurrentThreadAllocatedBytes();
            for (int i = 0; i < 93; i++) {
                performer.read(block);
                meters.accept(block);
            }
            allocated = Math.min(allocated, threads.getCurrentThreadAllocatedBytes() - before);
        }
        assertThat(allocated).as("bytes in the calmest second").isZero();
    }

    @Test
    void aRenewedMomentLeavesTheRestAlone() {
        TakeMeters meters = new TakeMeters(SoundFormat.mono(8000), 60);
        DemoPerformer performer = new DemoPerformer(8000, 1, DemoScenario.kitchen());
        hear(meters, performer, 80, 1000);
        TakeReadings first = meters.readings("demo");
        hear(meters, performer, 80, 1000);
        TakeReadings renewed = meters.renewed(first);
        assertThat(renewed.take().durationSeconds()).isEqualTo(20);
        assertThat(renewed.level().frames()).isEqualTo(160_000);
        assertThat(List.of(renewed.noise(), renewed.spectrum(), renewed.activity())).isEqualTo(List.of(first.noise(), first.spectrum(), first.activity()));
    }

    private static void hear(TakeMeters meters, DemoPerformer performer, int blocks, int blockFrames) {
        AudioBlock block = new AudioBlock(blockFrames);
        for (int i = 0; i < blocks; i++) {
            performer.read(block);
            meters.accept(block);
        }
    }

    private static TakeReadings heard(int rateHz, int blockFrames) {
        TakeMeters meters = new TakeMeters(SoundFormat.mono(rateHz), 60);
        DemoPerformer performer = new DemoPerformer(rateHz, 1, DemoScenario.kitchen());
        AudioBlock block = new AudioBlock(blockFrames);
        while (performer.read(block) >= 0) {
            meters.accept(block);
        }
        return meters.readingsOfFinishedTake("demo");
    }
}
