package evenwood.takes;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.measure.TakeReadings;
import evenwood.sound.SoundFormat;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class HeardToneTest {
    private static final int RATE_HZ = 48_000;

    @Test
    void theToneMetersAloneReadWhatTheyReadAmongAll() {
        float[] samples = plucks();
        SoundFormat format = SoundFormat.mono(RATE_HZ);
        TakeReadings all = Heard.readings(samples, format);
        TakeReadings tone = HeardTone.readings(samples, format);
        assertThat(tone.notes().notes()).isNotEmpty().isEqualTo(all.notes().notes());
        assertThat(tone.spectrum()).isEqualTo(all.spectrum());
        assertThat(tone.activity().states()).isEqualTo(all.activity().states());
        assertThat(tone.noteSpectra().spectra()).usingRecursiveComparison().isEqualTo(all.noteSpectra().spectra());
    }

    /** Eight plucks of a dozen partials each that die away, seed 3 for the pitches. */
    private static float[] plucks() {
        SplittableRandom random = new SplittableRandom(3);
        float[] samples = new float[4 * RATE_HZ];
        for (int pluck = 0; pluck < 8; pluck++) {
            double pitchHz = 110 * Math.pow(2, random.nextInt(24) / 12.0);
            for (int i = 0; i < RATE_HZ / 2; i++) {
                double seconds = (double) i / RATE_HZ;
                for (int k = 1; k <= 12; k++) {
                    samples[pluck * RATE_HZ / 2 + i] += (float) (0.2 / k * Math.exp(-6 * seconds) * Math.sin(2 * Math.PI * k * pitchHz * seconds));
                }
            }
        }
        return samples;
    }
}
