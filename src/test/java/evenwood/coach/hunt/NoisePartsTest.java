package evenwood.coach.hunt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.measure.NoiseReading;
import evenwood.measure.Tone;
import evenwood.rig.HuntTable.Part;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class NoisePartsTest {
    private static final double NONE = Double.NEGATIVE_INFINITY;

    static NoiseParts parts(double hum, double buzz, double hiss, double tone) {
        return new NoiseParts(Map.of(Part.HUM, hum, Part.BUZZ, buzz, Part.HISS, hiss, Part.TONE, tone),
            Map.of(Part.HUM, 0.3, Part.BUZZ, 0.3, Part.HISS, 0.1, Part.TONE, 0.3));
    }

    @Test
    void oneKnockDoesNotCount() {
        List<NoiseReading> stretches = List.of(reading(-60, NONE, -80), reading(-60.2, NONE, -80.1), reading(-30, NONE, -40), reading(-59.8, NONE, -79.9), reading(-60, NONE, -80));
        NoiseParts parts = NoiseParts.of(stretches);
        assertThat(parts.levelDbfs().get(Part.HUM)).isCloseTo(-60, within(0.01));
        assertThat(parts.levelDbfs().get(Part.HISS)).isCloseTo(-80, within(0.01));
        assertThat(parts.deviationDb().get(Part.HUM)).isLessThan(0.3);
        assertThat(parts.isUnsteady()).isFalse();
    }

    /** Half of all phones' seconds are silent: the mean of 10⁻⁶ and next to nothing is 3 dB less. */
    @Test
    void whatSendsHalfOfTheTimeIsHeardAtItsMeanPower() {
        List<NoiseReading> stretches = IntStream.range(0, 6).mapToObj(i -> reading(NONE, NONE, -95, i % 2 == 0 ? new Tone[] {new Tone(217, -60)} : new Tone[0])).toList();
        NoiseParts parts = NoiseParts.of(stretches);
        assertThat(parts.levelDbfs().get(Part.TONE)).isCloseTo(-63.01, within(0.05));
        assertThat(parts.deviationDb().get(Part.TONE)).as("and is that unsure").isBetween(1.5, 3.0);
    }

    @Test
    void whatIsNotThereLiesUnderTheHissAndIsNotNoticed() {
        NoiseParts parts = NoiseParts.of(List.of(reading(NONE, NONE, -60)));
        assertThat(parts.levelDbfs().get(Part.HUM)).isEqualTo(-90);
        assertThat(parts.noticeable()).containsExactly(Part.HISS);
        assertThat(NoiseParts.of(List.of(NoiseReading.NOTHING)).noticeable()).isEmpty();
    }

    @Test
    void aWeakNoiseBesideAStrongOneIsNotTakenForItsPart() {
        NoiseParts parts = parts(-45, -80, -95, -120);
        assertThat(parts.noticeable()).containsExactlyInAnyOrder(Part.HUM, Part.BUZZ);
        assertThat(parts.together()).containsExactly(Part.HUM);
    }

    @Test
    void noiseThatComesAndGoesIsToldAsUnsteady() {
        assertThat(NoiseParts.of(List.of(reading(NONE, NONE, -80), reading(NONE, NONE, -60), reading(NONE, NONE, -40), reading(NONE, NONE, -70))).isUnsteady()).isTrue();
    }

    private static NoiseReading reading(double hum, double buzz, double hiss, Tone... tones) {
        return new NoiseReading(Math.max(hiss, hum), hiss, hum > NONE ? OptionalDouble.of(50) : OptionalDouble.empty(), 0.01, hum, buzz, hiss, List.of(tones), 1,
            NoiseReading.Method.QUIET_PARTS);
    }
}
