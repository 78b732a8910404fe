package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.takes.PackagedTakes;
import evenwood.takes.PlayedInstrument;
import evenwood.takes.Take;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The demo held against recorded relatives: it should be one of the family. */
class DemoPerformerRealAudioTest {
    private static final int RATE_HZ = 48_000;
    private static final double[] OCTAVES_HZ = {125, 250, 500, 1000, 2000, 4000, 8000};
    private static final double FAMILY_DB = 6;

    @Test
    void everyOctaveOfTheCleanDemoIsAsStrongAsInSampledRelatives() {
        float[] demo = DemoPerformerTest.play(RATE_HZ, 1, DemoScenario.clean(), 512);
        List<Take> family = PackagedTakes.catalogue().stream().filter(take -> take.instrument() == PlayedInstrument.OCTAVE_MANDOLIN
            || take.instrument() == PlayedInstrument.BOUZOUKI || take.instrument() == PlayedInstrument.STEEL_STRING_GUITAR).toList();
        double[] lowest = new double[OCTAVES_HZ.length];
        double[] highest = new double[OCTAVES_HZ.length];
        Arrays.fill(lowest, Double.POSITIVE_INFINITY);
        Arrays.fill(highest, Double.NEGATIVE_INFINITY);
        for (Take take : family) {
            double[] octaves = octaves(PackagedTakes.samples(take));
            for (int i = 0; i < octaves.length; i++) {
                lowest[i] = Math.min(lowest[i], octaves[i]);
                highest[i] = Math.max(highest[i], octaves[i]);
            }
        }
        double[] heard = octaves(demo);
        for (int i = 0; i < heard.length; i++) {
            assertThat(heard[i]).as("octave at %.0f Hz", OCTAVES_HZ[i]).isBetween(lowest[i] - FAMILY_DB, highest[i] + FAMILY_DB);
        }
    }

    /** Octave levels against the whole. */
    private static double[] octaves(float[] take) {
        double[] octaves = new double[OCTAVES_HZ.length];
        for (int i = 0; i < octaves.length; i++) {
            octaves[i] = Spectra.octaveDb(take, 0, take.length, RATE_HZ, OCTAVES_HZ[i]) - Spectra.rmsDb(take, 0, take.length);
        }
        return octaves;
    }
}
