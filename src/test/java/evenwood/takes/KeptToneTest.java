package evenwood.takes;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.measure.TakeReadings;
import evenwood.sound.SoundFormat;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import org.junit.jupiter.api.Test;

class KeptToneTest {
    private static final int RATE_HZ = 48_000;

    @Test
    void whatIsKeptIsReadBackAsItWas() throws IOException {
        TakeReadings heard = HeardTone.readings(tones(), SoundFormat.mono(RATE_HZ));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        KeptTone.write(new DataOutputStream(bytes), heard);
        TakeReadings kept = KeptTone.read(new DataInputStream(new ByteArrayInputStream(bytes.toByteArray())), SoundFormat.mono(RATE_HZ));
        assertThat(kept.notes().notes()).isNotEmpty().isEqualTo(heard.notes().notes());
        assertThat(kept.spectrum()).isEqualTo(heard.spectrum());
        assertThat(kept).usingRecursiveComparison().isEqualTo(heard);
    }

    /** Six notes of eight partials that die away. */
    private static float[] tones() {
        float[] samples = new float[3 * RATE_HZ];
        for (int i = 0; i < samples.length; i++) {
            int note = i / (RATE_HZ / 2);
            double seconds = (i % (RATE_HZ / 2)) / (double) RATE_HZ;
            for (int k = 1; k <= 8; k++) {
                samples[i] += (float) (0.2 / k * Math.exp(-5 * seconds) * Math.sin(2 * Math.PI * k * 110 * Math.pow(2, note / 6.0) * seconds));
            }
        }
        return samples;
    }
}
