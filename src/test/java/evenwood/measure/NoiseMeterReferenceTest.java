package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.Needs;
import evenwood.ReferenceTable;
import evenwood.measure.NoiseMixture.Family;
import evenwood.takes.TakeFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class NoiseMeterReferenceTest {
    private static final int[] RATES_HZ = {8_000, 11_025, 16_000, 22_050, 32_000, 44_100, 48_000, 88_200, 96_000, 192_000};

    static List<ReferenceTable.Row> whiteNoise() {
        return ReferenceTable.read("a-weighted-white-noise.csv");
    }

    /** Integrals made by scipy 1.17.1, a-weighted-white-noise.py; 20 s of noise leave 0.02 dB open. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("whiteNoise")
    void whiteNoiseReadsWhatTheCurveIntegratesTo(ReferenceTable.Row row) {
        NoiseReading reading = new NoiseMixture(row.integer("sample_rate_hz"), 20, 1).hiss(-60).read();
        assertThat(reading.floorDbfs()).isCloseTo(-60 + row.number("plain_db"), within(0.06));
        assertThat(reading.floorDbfsA()).isCloseTo(-60 + row.number("a_weighted_db"), within(0.06));
        assertThat(reading.hissDbfs()).isCloseTo(-60 + row.number("plain_db"), within(0.15));
    }

    /** ffmpeg's astats on the same samples; at 32 kHz nothing but 0 to 20 Hz is left out of the floor. */
    @Test
    void theFloorIsWhatFfmpegCallsRms() throws IOException {
        Needs.program("ffmpeg");
        float[] sound = new NoiseMixture(32_000, 10, 2).hiss(-55).mains(Family.CHARGING, 50, -50).samples();
        Path file = Files.createTempFile("noise", ".wav");
        try {
            TakeFile.writeFloat(file, sound, 32_000);
            NoiseReading reading = NoiseMixture.read(sound, 32_000, NoiseMixture.allQuiet(32_000, sound.length));
            assertThat(reading.floorDbfs()).isCloseTo(FfmpegLevels.of(file).rmsDbfs(), within(0.05));
        } finally {
            Files.delete(file);
        }
    }

    static Stream<Arguments> grid() {
        List<Arguments> grid = new ArrayList<>();
        int number = 0;
        for (int rateHz : RATES_HZ) {
            for (Family family : Family.values()) {
                for (double humOverHissDb : new double[] {0, 15, 40}) {
                    number++;
                    double mainsHz = (number % 2 == 0 ? 50 : 60) * (1 + 0.009 * Math.sin(number));
                    grid.add(Arguments.of(rateHz, family, humOverHissDb, mainsHz, number));
                }
            }
        }
        return grid.stream();
    }

    /** Families of reference §8.2 put in with exact truth; tolerances of the acceptance: 0.02 Hz and 1 dB. */
    @ParameterizedTest(name = "{0} Hz, {1}, hum {2} dB over the hiss, mains {3} Hz")
    @MethodSource("grid")
    void mainsNoiseIsMeasuredAtAnyRate(int rateHz, Family family, double humOverHissDb, double mainsHz, long seed) {
        NoiseMixture mixture = new NoiseMixture(rateHz, 3, seed).hiss(-80).mains(family, mainsHz, -80 + humOverHissDb);
        NoiseReading reading = mixture.read();
        assertThat(reading.mainsHz().orElseThrow()).isCloseTo(mainsHz, within(0.02));
        assertThat(reading.humDbfs()).isCloseTo(mixture.humDbfs(), within(1.0));
        if (mixture.buzzDbfs() > -80) {
            assertThat(reading.buzzDbfs()).isCloseTo(mixture.buzzDbfs(), within(1.0));
        }
    }
}
