package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.measure.Dropout.Kind;
import evenwood.sound.Decibels;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DropoutMeterTest {
    private static final int RATE_HZ = 48_000;

    @ParameterizedTest(name = "at {0} Hz")
    @ValueSource(ints = {8_000, 11_025, 16_000, 22_050, 32_000, 44_100, 48_000, 88_200, 96_000, 192_000})
    void zerosHeldSamplesAndRepeatsAreFoundToTheFrame(int rateHz) {
        float[] sound = music(rateHz, 3);
        int hole = Math.max(8, rateHz / 1000);
        int zeros = rateHz / 2 + 7;
        int held = rateHz + 11;
        int repeat = 2 * rateHz + 13;
        for (int i = 0; i < hole; i++) {
            sound[zeros + i] = 0;
            sound[held + i] = sound[held - 1];
        }
        System.arraycopy(sound, repeat - 4 * hole, sound, repeat, 4 * hole);
        assertThat(HeardInBlocks.dropouts(sound, rateHz)).containsExactly(
            new Dropout(Kind.ZEROS, zeros, hole), new Dropout(Kind.HELD_SAMPLE, held, hole),
            new Dropout(Kind.REPEATED_BLOCK, repeat, 4 * hole));
    }

    @Test
    void halfAMillisecondIsFoundAndLessIsNot() {
        float[] sound = music(RATE_HZ, 2);
        java.util.Arrays.fill(sound, RATE_HZ, RATE_HZ + 24, 0f);
        java.util.Arrays.fill(sound, RATE_HZ / 2, RATE_HZ / 2 + 20, 0f);
        assertThat(HeardInBlocks.dropouts(sound, RATE_HZ)).containsExactly(new Dropout(Kind.ZEROS, RATE_HZ, 24));
    }

    @Test
    void digitalSilenceBetweenNotesThatDieAwayIsNoDropout() {
        float[] sound = new float[4 * RATE_HZ];
        for (int note = 0; note < 16; note++) {
            for (int i = 0; i < RATE_HZ / 5; i++) {
                double x = 0.5 * Math.exp(-i / 600.0) * Math.sin(2 * Math.PI * 196 * i / RATE_HZ);
                sound[note * RATE_HZ / 4 + i] = Math.round(x * 32768) / 32768f;
            }
        }
        assertThat(HeardInBlocks.dropouts(sound, RATE_HZ)).isEmpty();
    }

    @Test
    void flatTopsOfClippingAreNoDropouts() {
        float[] sound = music(RATE_HZ, 2);
        for (int i = 0; i < sound.length; i++) {
            sound[i] = Math.max(-0.1f, Math.min(0.1f, sound[i]));
        }
        assertThat(HeardInBlocks.dropouts(sound, RATE_HZ)).isEmpty();
    }

    @Test
    void aPeriodicTestToneIsNoRepeatedBlock() {
        float[] sound = new float[3 * RATE_HZ];
        for (int i = 0; i < sound.length; i++) {
            sound[i] = (float) (0.5 * Math.sin(2 * Math.PI * (i % 48) / 48));
        }
        for (int i = RATE_HZ; i < sound.length; i++) {
            sound[i] = (float) (0.5 * Math.sin(2 * Math.PI * (i % 60) / 60));
        }
        assertThat(HeardInBlocks.dropouts(sound, RATE_HZ)).isEmpty();
    }

    @Test
    void aSquareWaveHasNoDropouts() {
        float[] sound = new float[RATE_HZ];
        for (int i = 0; i < sound.length; i++) {
            sound[i] = i / 120 % 2 == 0 ? 0.3f : -0.3f;
        }
        assertThat(HeardInBlocks.dropouts(sound, RATE_HZ)).isEmpty();
    }

    /** The flat top of a low quiet note stands on one 16-bit code for half a millisecond and more; nothing is missing there. */
    @ParameterizedTest(name = "{0} Hz at {1} dBFS")
    @CsvSource({"41.2, -55", "65.4, -50", "65.4, -60", "82.4, -45", "110, -50"})
    void lowQuietNotesInSixteenBitsHaveNoDropouts(double hz, double peakDbfs) {
        float[] sound = Signals.add(Signals.sine(48_000, 4, hz, Decibels.toAmplitude(peakDbfs)), Signals.sine(48_000, 4, 2.01 * hz, Decibels.toAmplitude(peakDbfs - 4)));
        for (int i = 0; i < sound.length; i++) {
            sound[i] = Math.round(sound[i] * 32_768) / 32_768f;
        }
        assertThat(HeardInBlocks.dropouts(sound, 48_000)).isEmpty();
    }

    @Test
    void aQuietRoomRoundedToSixteenBitsHasNoDropouts() {
        float[] sound = new NoiseMixture(RATE_HZ, 5, 6).hiss(-92).tone(60, -75).samples();
        for (int i = 0; i < sound.length; i++) {
            sound[i] = Math.round(sound[i] * 32768) / 32768f;
        }
        assertThat(HeardInBlocks.dropouts(sound, RATE_HZ)).isEmpty();
    }

    @Test
    void whatWasHeardIsForgottenOnReset() {
        float[] sound = music(RATE_HZ, 2);
        java.util.Arrays.fill(sound, RATE_HZ, RATE_HZ + 100, 0f);
        DropoutMeter meter = new DropoutMeter(RATE_HZ);
        Blocks.feed(sound, meter::accept);
        DropoutReading once = meter.reading();
        assertThat(once.count()).isEqualTo(1);
        meter.reset();
        assertThat(meter.reading().count()).isZero();
        Blocks.feed(sound, meter::accept);
        assertThat(meter.reading()).isEqualTo(once);
    }

    /** A chord and some hiss. */
    private static float[] music(int rateHz, double seconds) {
        return new NoiseMixture(rateHz, seconds, 9).hiss(-70).tone(146.8, -20).tone(220.3, -23).tone(371.7, -26).samples();
    }
}
