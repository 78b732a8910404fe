package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.measure.NoiseMixture.Family;
import org.junit.jupiter.api.Test;

class NoiseMeterTest {
    private static final int RATE_HZ = 48_000;

    @Test
    void nothingHeardIsNothing() {
        NoiseMeter meter = new NoiseMeter(new HopGrid(RATE_HZ), 10);
        assertThat(meter.reading(NoiseMixture.allQuiet(RATE_HZ, 0))).isEqualTo(NoiseReading.NOTHING);
    }

    @Test
    void digitalSilenceHasNoNoise() {
        NoiseReading reading = new NoiseMixture(RATE_HZ, 3, 1).read();
        assertThat(reading.floorDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(reading.hissDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(reading.humDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(reading.mainsHz()).isEmpty();
        assertThat(reading.tones()).isEmpty();
    }

    @Test
    void hissAloneIsNeitherHumNorBuzzNorTone() {
        NoiseReading reading = new NoiseMixture(RATE_HZ, 10, 2).hiss(-70).read();
        // White noise: the meter hears 20 Hz to 20 kHz of the 24 kHz, 0.80 dB less.
        double inBandDbfs = -70 + 10 * Math.log10((20_000 - 20) / 24_000.0);
        assertThat(reading.floorDbfs()).isCloseTo(inBandDbfs, within(0.1));
        assertThat(reading.hissDbfs()).isCloseTo(inBandDbfs, within(0.1));
        assertThat(reading.mainsHz()).isEmpty();
        assertThat(reading.humDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(reading.buzzDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(reading.tones()).isEmpty();
    }

    @Test
    void aNoiseThatIsMostlyHumIsTakenApart() {
        NoiseMixture mixture = new NoiseMixture(RATE_HZ, 5, 3).hiss(-90).mains(Family.CHARGING, 50.07, -30);
        NoiseReading reading = mixture.read();
        assertThat(reading.mainsHz().orElseThrow()).isCloseTo(50.07, within(0.02));
        assertThat(reading.humDbfs()).isCloseTo(mixture.humDbfs(), within(0.2));
        assertThat(reading.buzzDbfs()).isCloseTo(mixture.buzzDbfs(), within(0.5));
    }

    @Test
    void aComputersKilohertzIsATone() {
        NoiseReading reading = new NoiseMixture(RATE_HZ, 5, 4).hiss(-80).tone(1000, -75).tone(8000, -78).read();
        assertThat(reading.tones()).hasSize(2);
        assertThat(reading.tones().get(0).frequencyHz()).isCloseTo(1000, within(1.0));
        assertThat(reading.tones().get(0).levelDbfs()).isCloseTo(-75, within(0.5));
        assertThat(reading.tones().get(1).frequencyHz()).isCloseTo(8000, within(4.0));
        assertThat(reading.tones().get(1).levelDbfs()).isCloseTo(-78, within(0.5));
        assertThat(reading.mainsHz()).isEmpty();
    }

    /** One short rest in which a string rings evenly on: a tone only if it is still there when the string is not. */
    @Test
    void aStringThatRingsThroughTheOnlyRestIsNoTone() {
        float[] always = new NoiseMixture(RATE_HZ, 6, 4).hiss(-85).tone(146.8, -55).samples();
        float[] untilThree = new NoiseMixture(RATE_HZ, 6, 4).hiss(-85).samples();
        System.arraycopy(always, 0, untilThree, 0, 3 * RATE_HZ);
        assertThat(NoiseMixture.read(always, RATE_HZ, quietInTheSecondSecond(always.length)).tones()).extracting(Tone::frequencyHz)
            .singleElement().satisfies(hz -> assertThat(hz).isCloseTo(146.8, within(0.5)));
        assertThat(NoiseMixture.read(untilThree, RATE_HZ, quietInTheSecondSecond(untilThree.length)).tones()).isEmpty();
    }

    private static ActivityReading quietInTheSecondSecond(int frames) {
        ActivityReading all = NoiseMixture.allQuiet(RATE_HZ, frames);
        byte[] states = all.states().clone();
        for (int hop = 0; hop < states.length; hop++) {
            double seconds = all.grid().startSeconds(hop);
            states[hop] = seconds >= 1 && seconds < 2 ? states[hop] : ActivityReading.PLAYING;
        }
        return new ActivityReading(all.grid(), all.firstHop(), states, all.floorDbfs());
    }

    @Test
    void aLineAtTwiceTheMainsAloneIsNotCalledMains() {
        NoiseReading reading = new NoiseMixture(RATE_HZ, 5, 5).hiss(-80).tone(100, -60).read();
        assertThat(reading.mainsHz()).isEmpty();
        assertThat(reading.tones()).hasSize(1);
        assertThat(reading.tones().get(0).levelDbfs()).isCloseTo(-60, within(0.5));
    }

    @Test
    void threeHundredAndSixHundredHertzDoNotTellFiftyFromSixty() {
        NoiseReading reading = new NoiseMixture(RATE_HZ, 5, 6).hiss(-80).tone(300, -60).tone(600, -66).read();
        assertThat(reading.mainsHz()).isEmpty();
    }
}
