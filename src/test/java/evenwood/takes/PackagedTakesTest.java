package evenwood.takes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PackagedTakesTest {
    static Stream<Take> catalogue() {
        return PackagedTakes.catalogue().stream();
    }

    @Test
    void theCatalogueHoldsAtLeastFortyTakesOverTwentyInstruments() {
        List<Take> takes = PackagedTakes.catalogue();
        assertThat(takes).hasSizeGreaterThanOrEqualTo(40).doesNotHaveDuplicates();
        assertThat(takes.stream().map(Take::instrument).distinct().count()).isGreaterThanOrEqualTo(20);
    }

    @ParameterizedTest
    @MethodSource("catalogue")
    void everyNoteLiesInTheInstrumentsRange(Take take) {
        assertThat(PackagedTakes.notes(take)).isNotEmpty().allSatisfy(note ->
            assertThat(note.midi()).isBetween(take.instrument().lowestMidi(), take.instrument().highestMidi()));
    }

    @ParameterizedTest
    @MethodSource("catalogue")
    void everyTakeRestsInSilenceSoundsAndPeaksWhereAsked(Take take) {
        float[] samples = PackagedTakes.samples(take);
        int rest = (int) (1.4 * take.sampleRateHz());
        assertThat(peak(samples, 0, rest)).as("rest before the first note").isZero();
        assertThat(20 * Math.log10(peak(samples, 0, samples.length))).isCloseTo(Take.USUAL_PEAK_DBFS, within(0.01));
        for (PlayedNote note : PackagedTakes.notes(take)) {
            int start = (int) (note.startSeconds() * take.sampleRateHz());
            double heard = 20 * Math.log10(peak(samples, start, start + take.sampleRateHz() / 5));
            assertThat(heard).as("note at %.2f s", note.startSeconds()).isGreaterThan(-70);
        }
    }

    @Test
    void theRoomAddsExactlyItsNoiseAndEndsDigitalSilence() {
        Take take = PackagedTakes.of(PlayedInstrument.STEEL_STRING_GUITAR);
        float[] dry = PackagedTakes.samples(take);
        float[] roomy = PackagedTakes.samples(take.withRoom(-88, 7));
        double sum = 0;
        for (int i = 0; i < dry.length; i++) {
            sum += Math.pow(roomy[i] - (double) dry[i], 2);
        }
        assertThat(10 * Math.log10(sum / dry.length)).isCloseTo(-88, within(0.02));
        assertThat(Arrays.equals(PackagedTakes.samples(take.withRoom(-88, 7)), roomy)).isTrue();
        assertThat(Arrays.equals(PackagedTakes.samples(take.withRoom(-88, 8)), roomy)).isFalse();
    }

    @Test
    void theFileHoldsTheSameSamples() {
        Take take = PackagedTakes.of(PlayedInstrument.VIOLIN).withPeak(-3);
        assertThat(Arrays.equals(TakeFile.readMono(PackagedTakes.take(take)), PackagedTakes.samples(take))).isTrue();
    }

    /** One take an instrument and everything our own player of patches renders. */
    static Stream<Take> pitched() {
        return Stream.concat(PackagedTakes.oneEach().stream(), catalogue().filter(take -> take.voice().bank() == SampledBank.FREEPATS));
    }

    @ParameterizedTest
    @MethodSource("pitched")
    void aNoteSoundsAtItsPitch(Take take) {
        PlayedNote longest = PackagedTakes.notes(take.playing(Dynamics.USUAL, PhraseKind.SCALE)).get(3);
        float[] samples = PackagedTakes.samples(take.playing(Dynamics.USUAL, PhraseKind.SCALE));
        int from = (int) (longest.startSeconds() * take.sampleRateHz());
        int frames = (int) (0.2 * take.sampleRateHz());
        double best = 0;
        int bestMidi = 0;
        for (int midi = longest.midi() - 6; midi <= longest.midi() + 6; midi++) {
            double hz = 440 * Math.pow(2, (midi - 69) / 12.0);
            double strength = 0;
            for (int k = 1; k <= 6; k++) {
                strength += lineDb(samples, from, frames, k * hz / take.sampleRateHz());
            }
            if (bestMidi == 0 || strength > best) {
                best = strength;
                bestMidi = midi;
            }
        }
        assertThat(bestMidi).isEqualTo(longest.midi());
    }

    @ParameterizedTest
    @MethodSource("evenwood.takes.RecordedTakes#names")
    void recordedTakesSoundAndAreNotClipped(String name) {
        float[] samples = RecordedTakes.samples(name);
        assertThat(samples.length).isGreaterThan(3 * RecordedTakes.SAMPLE_RATE_HZ);
        assertThat(20 * Math.log10(peak(samples, 0, samples.length))).isBetween(-12.0, -1.0);
    }

    @Test
    void hardPhrasesAreLouderThanSoftOnes() {
        Take take = PackagedTakes.of(PlayedInstrument.NYLON_STRING_GUITAR);
        float[] both = PackagedTakes.samples(take.playing(List.of(PhraseKind.SCALE, PhraseKind.SCALE), List.of(Dynamics.SOFT, Dynamics.HARD)));
        int half = both.length / 2;
        double stepDb = 20 * Math.log10(peak(both, half, both.length) / peak(both, 0, half));
        assertThat(stepDb).isBetween(10.0, 24.0);
    }

    private static double lineDb(float[] samples, int from, int frames, double cyclesPerFrame) {
        double real = 0;
        double imaginary = 0;
        for (int i = 0; i < frames; i++) {
            double v = (1 - Math.cos(2 * Math.PI * i / frames)) * samples[from + i];
            real += v * Math.cos(2 * Math.PI * cyclesPerFrame * i);
            imaginary += v * Math.sin(2 * Math.PI * cyclesPerFrame * i);
        }
        return 20 * Math.log10(Math.hypot(real, imaginary) + 1e-9);
    }

    private static double peak(float[] samples, int from, int to) {
        double peak = 0;
        for (int i = from; i < Math.min(to, samples.length); i++) {
            peak = Math.max(peak, Math.abs(samples[i]));
        }
        return peak;
    }
}
