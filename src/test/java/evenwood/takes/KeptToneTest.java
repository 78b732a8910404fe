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
    @Test
    void whatIsKeptIsReadBackAsItWas() throws IOException {
        TakeReadings heard = HeardTone.readings(CheckScore.usual(6), SoundFormat.mono(CheckScore.RATE_HZ));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        KeptTone.write(new DataOutputStream(bytes), heard);
        TakeReadings kept = KeptTone.read(new DataInputStream(new ByteArrayInputStream(bytes.toByteArray())), SoundFormat.mono(CheckScore.RATE_HZ));
        assertThat(kept.notes().notes()).isNotEmpty().isEqualTo(heard.notes().notes());
        assertThat(kept.spectrum()).isEqualTo(heard.spectrum());
        assertThat(kept).usingRecursiveComparison().isEqualTo(heard);
    }
}
