package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenwood.sound.AudioBlock;
import org.junit.jupiter.api.Test;

class LoudnessMeterTest {
    private static final int RATE = 48_000;
    private final LoudnessMeter meter = new LoudnessMeter(RATE, 1);

    @Test
    void nothingHeardAndSilenceReadMinusInfinity() {
        assertThat(meter.reading()).isEqualTo(LoudnessReading.SILENCE);
        Blocks.feed(new float[5 * RATE], meter::accept);
        assertThat(meter.reading()).isEqualTo(LoudnessReading.SILENCE);
        assertThat(meter.reading().isSilent()).isTrue();
    }

    @Test
    void aWindowThatIsNotFullReadsMinusInfinity() {
        Blocks.feed(sine(0.399), meter::accept);
        assertThat(meter.reading()).isEqualTo(LoudnessReading.SILENCE);
        Blocks.feed(sine(0.601), meter::accept);
        assertThat(meter.reading().momentaryLufs()).isCloseTo(-26, within(0.1));
        assertThat(meter.reading().integratedLufs()).isCloseTo(-26, within(0.1));
        assertThat(meter.reading().shortTermLufs()).isEqualTo(Double.NEGATIVE_INFINITY);
        Blocks.feed(sine(2), meter::accept);
        assertThat(meter.reading().shortTermLufs()).isCloseTo(-26, within(0.1));
    }

    @Test
    void afterTheSoundComesSilenceButTheMaximaStay() {
        Blocks.feed(Blocks.joined(sine(4), new float[8 * RATE]), meter::accept);
        LoudnessReading reading = meter.reading();
        assertThat(reading.momentaryLufs()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(reading.shortTermLufs()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(reading.maxMomentaryLufs()).isCloseTo(-26, within(0.1));
        assertThat(reading.maxShortTermLufs()).isCloseTo(-26, within(0.1));
    }

    @Test
    void theRangeSettlesAfterAMinute() {
        Blocks.feed(sine(59.9), meter::accept);
        assertThat(meter.reading().rangeStable()).isFalse();
        Blocks.feed(sine(0.1), meter::accept);
        assertThat(meter.reading().rangeStable()).isTrue();
    }

    @Test
    void aFinishedTakeReadsAsIfSilenceFollowed() {
        float[] sound = Blocks.joined(Blocks.scaled(sine(8), 0.1), sine(1));
        Blocks.feed(sound, meter::accept);
        LoudnessReading finished = meter.readingOfFinishedTake();
        LoudnessReading live = meter.reading();
        LoudnessMeter withSilence = new LoudnessMeter(RATE, 1);
        Blocks.feed(Blocks.joined(sound, new float[RATE * 3 / 2]), withSilence::accept);
        // Not closer, because the filter's short ringing into the real silence is not imagined.
        assertThat(finished.rangeLu()).isCloseTo(withSilence.reading().rangeLu(), within(1e-3));
        assertThat(finished.rangeLu() - live.rangeLu()).isGreaterThan(0.5);
        assertThat(finished.integratedLufs()).isEqualTo(live.integratedLufs());
        assertThat(finished.momentaryLufs()).isEqualTo(live.momentaryLufs());
    }

    @Test
    void readingAFinishedTakeChangesNothing() {
        Blocks.feed(Blocks.anySound(5, RATE, 10), meter::accept);
        LoudnessReading before = meter.reading();
        meter.readingOfFinishedTake();
        assertThat(meter.reading()).isEqualTo(before);
    }

    @Test
    void resetForgetsEverything() {
        Blocks.feed(Blocks.anySound(4, RATE, 70), meter::accept);
        meter.reset();
        assertThat(meter.reading()).isEqualTo(LoudnessReading.SILENCE);
        LoudnessMeter fresh = new LoudnessMeter(RATE, 1);
        float[] sound = Blocks.anySound(6, RATE, 5);
        Blocks.feed(sound, meter::accept);
        Blocks.feed(sound, fresh::accept);
        assertThat(meter.reading()).isEqualTo(fresh.reading());
    }

    @Test
    void surroundCountsMoreAndTheBassChannelNotAtAll() {
        assertThat(sixChannels(0)).isCloseTo(-26, within(0.1));
        assertThat(sixChannels(2)).isEqualTo(sixChannels(0));
        assertThat(sixChannels(4) - sixChannels(0)).isCloseTo(10 * Math.log10(1.41), within(1e-9));
        assertThat(sixChannels(3)).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    @Test
    void wrongChannelsAreRefused() {
        assertThatThrownBy(() -> new LoudnessMeter(RATE, 7)).hasMessage(
            "loudness meter: channels=7, but 1 to 6 have loudness weights; choose one channel");
        assertThatThrownBy(() -> new LoudnessMeter(RATE, 2).accept(AudioBlock.of(0, 0f))).hasMessage(
            "loudness meter: channels=1, but it was made for 2");
    }

    @Test
    void aReadingNeverHoldsNaN() {
        assertThatThrownBy(() -> new LoudnessReading(0, 0, 0, 0, Double.NaN, 0, false))
            .hasMessageContaining("integratedLufs=NaN, rangeLu=0.0, but all must be numbers (−Infinity for silence)");
    }

    @Test
    void hearingAllocatesNothing() {
        assertThat(Allocation.bytesOf(meter::accept)).isZero();
        LoudnessMeter stereo = new LoudnessMeter(RATE, 2);
        AudioBlock[] channels = new AudioBlock[2];
        assertThat(Allocation.bytesOf(block -> {
            channels[0] = block;
            channels[1] = block;
            stereo.accept(channels);
        })).isZero();
    }

    private static double sixChannels(int sounding) {
        LoudnessMeter meter = new LoudnessMeter(RATE, 6);
        float[] sine = sine(1);
        AudioBlock[] channels = new AudioBlock[6];
        for (int channel = 0; channel < 6; channel++) {
            channels[channel] = AudioBlock.of(0, channel == sounding ? sine : new float[sine.length]);
        }
        meter.accept(channels);
        return meter.reading().integratedLufs();
    }

    private static float[] sine(double seconds) {
        float[] sine = new float[(int) Math.round(seconds * RATE)];
        for (int i = 0; i < sine.length; i++) {
            sine[i] = (float) (Math.pow(10, -23 / 20.0) * Math.sin(2 * Math.PI * (i % 48) / 48));
        }
        return sine;
    }
}
