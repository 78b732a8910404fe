package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ClickMeterTest {
    private static final int RATE_HZ = 48_000;

    @ParameterizedTest(name = "at {0} Hz")
    @ValueSource(ints = {8_000, 11_025, 16_000, 22_050, 32_000, 44_100, 48_000, 88_200, 96_000, 192_000})
    void aJumpThatDiesAwayInAMillisecondIsAClick(int rateHz) {
        float[] sound = new NoiseMixture(rateHz, 3, 1).hiss(-70).tone(220, -30).samples();
        long[] places = {rateHz / 2, rateHz, 2 * rateHz};
        for (long place : places) {
            for (int i = 0; i < rateHz / 250; i++) {
                sound[(int) place + i] += (float) (0.2 * Math.exp(-i / (0.0004 * rateHz)));
            }
        }
        ClickReading reading = HeardInBlocks.clicks(sound, rateHz);
        assertThat(reading.count()).isEqualTo(3);
        for (int i = 0; i < places.length; i++) {
            assertThat(reading.startSeconds().get(i)).isCloseTo((double) places[i] / rateHz, within(0.000_4));
        }
    }

    @Test
    void aSingleSampleOffIsAClickInAQuietRoom() {
        float[] sound = new NoiseMixture(RATE_HZ, 2, 2).hiss(-90).samples();
        sound[RATE_HZ] += 0.01f;
        assertThat(HeardInBlocks.clicks(sound, RATE_HZ).count()).isEqualTo(1);
    }

    @Test
    void aClickInDigitalSilenceIsAClick() {
        float[] sound = new float[2 * RATE_HZ];
        for (int i = 0; i < 100; i++) {
            sound[RATE_HZ + i] = (float) (0.1 * Math.exp(-i / 15.0));
        }
        assertThat(HeardInBlocks.clicks(sound, RATE_HZ).count()).isEqualTo(1);
    }

    @Test
    void aSteadyBurstOfNoiseOfATwentiethOfASecondIsNoClick() {
        float[] sound = new NoiseMixture(RATE_HZ, 2, 3).hiss(-90).samples();
        float[] burst = new NoiseMixture(RATE_HZ, 0.05, 4).hiss(-20).samples();
        for (int i = 0; i < burst.length; i++) {
            sound[RATE_HZ + i] += burst[i];
        }
        assertThat(HeardInBlocks.clicks(sound, RATE_HZ).count()).isZero();
    }

    @Test
    void theEdgesOfASquareWaveAreNoClicks() {
        float[] sound = new float[3 * RATE_HZ];
        for (int i = 0; i < sound.length; i++) {
            sound[i] = i / 480 % 2 == 0 ? 0.3f : -0.3f;
        }
        assertThat(HeardInBlocks.clicks(sound, RATE_HZ).count()).isZero();
    }

    @Test
    void theCornersOfOneClippedNoteAreNoClicks() {
        float[] sound = new NoiseMixture(RATE_HZ, 3, 5).hiss(-80).samples();
        for (int i = 0; i < RATE_HZ; i++) {
            double note = 1.3 * Math.exp(-i / 900.0) * Math.sin(2 * Math.PI * 110 * i / RATE_HZ) * Math.min(1, i / 200.0);
            sound[RATE_HZ + i] = (float) Math.max(-0.5, Math.min(0.5, sound[RATE_HZ + i] + note));
        }
        assertThat(HeardInBlocks.clicks(sound, RATE_HZ).count()).isZero();
    }

    @Test
    void soundThatStartsOutOfDigitalSilenceIsNoClick() {
        float[] sound = new float[3 * RATE_HZ];
        for (int i = RATE_HZ; i < sound.length; i++) {
            sound[i] = (float) (0.3 * Math.cos(2 * Math.PI * 200 * (i - RATE_HZ) / RATE_HZ));
        }
        assertThat(HeardInBlocks.clicks(sound, RATE_HZ).count()).isZero();
    }

    @Test
    void whatWasHeardIsForgottenOnReset() {
        float[] sound = new NoiseMixture(RATE_HZ, 2, 2).hiss(-90).samples();
        sound[RATE_HZ] += 0.01f;
        ClickMeter meter = new ClickMeter(RATE_HZ);
        Blocks.feed(sound, meter::accept);
        ClickReading once = meter.reading();
        meter.reset();
        assertThat(meter.reading().count()).isZero();
        Blocks.feed(sound, meter::accept);
        assertThat(meter.reading()).isEqualTo(once);
    }

    @Test
    void theStepWhereSoundIsMissingIsNoClick() {
        float[] before = new NoiseMixture(RATE_HZ, 1, 7).hiss(-90).samples();
        float[] after = new NoiseMixture(RATE_HZ, 1, 8).hiss(-90).samples();
        for (int i = 0; i < after.length; i++) {
            after[i] += 0.1f;
        }
        ClickMeter told = new ClickMeter(RATE_HZ);
        Blocks.feed(before, told::accept);
        told.gap();
        Blocks.feed(after, told::accept);
        assertThat(told.reading().count()).isZero();
        ClickMeter notTold = new ClickMeter(RATE_HZ);
        Blocks.feed(before, notTold::accept);
        Blocks.feed(after, notTold::accept);
        assertThat(notTold.reading().count()).isEqualTo(1);
    }
}
