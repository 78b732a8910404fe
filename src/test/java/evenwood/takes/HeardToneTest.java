package evenwood.takes;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.measure.TakeReadings;
import evenwood.sound.SoundFormat;
import org.junit.jupiter.api.Test;

class HeardToneTest {
    @Test
    void theToneMetersAloneReadWhatTheyReadAmongAll() {
        float[] samples = CheckScore.usual(8);
        SoundFormat format = SoundFormat.mono(CheckScore.RATE_HZ);
        TakeReadings all = Heard.readings(samples, format);
        TakeReadings tone = HeardTone.readings(samples, format);
        assertThat(tone.notes().notes()).isNotEmpty().isEqualTo(all.notes().notes());
        assertThat(tone.spectrum()).isEqualTo(all.spectrum());
        assertThat(tone.activity().states()).isEqualTo(all.activity().states());
        assertThat(tone.noteSpectra().spectra()).usingRecursiveComparison().isEqualTo(all.noteSpectra().spectra());
    }
}
