package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class NoteNameReferenceTest {
    private static final String[] NAMES = {"C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"};
    /** f = 440·2^((m − 69)/12), C0 to B8, computed, tolerance 0.001 Hz; A4 = 440 Hz: ISO 16:1975. One row a note name. */
    private static final double[][] HZ = {
        {16.352, 32.703, 65.406, 130.813, 261.626, 523.251, 1046.502, 2093.005, 4186.009},
        {17.324, 34.648, 69.296, 138.591, 277.183, 554.365, 1108.731, 2217.461, 4434.922},
        {18.354, 36.708, 73.416, 146.832, 293.665, 587.330, 1174.659, 2349.318, 4698.636},
        {19.445, 38.891, 77.782, 155.563, 311.127, 622.254, 1244.508, 2489.016, 4978.032},
        {20.602, 41.203, 82.407, 164.814, 329.628, 659.255, 1318.510, 2637.020, 5274.041},
        {21.827, 43.654, 87.307, 174.614, 349.228, 698.456, 1396.913, 2793.826, 5587.652},
        {23.125, 46.249, 92.499, 184.997, 369.994, 739.989, 1479.978, 2959.955, 5919.911},
        {24.500, 48.999, 97.999, 195.998, 391.995, 783.991, 1567.982, 3135.963, 6271.927},
        {25.957, 51.913, 103.826, 207.652, 415.305, 830.609, 1661.219, 3322.438, 6644.875},
        {27.500, 55.000, 110.000, 220.000, 440.000, 880.000, 1760.000, 3520.000, 7040.000},
        {29.135, 58.270, 116.541, 233.082, 466.164, 932.328, 1864.655, 3729.310, 7458.620},
        {30.868, 61.735, 123.471, 246.942, 493.883, 987.767, 1975.533, 3951.066, 7902.133}};

    @Test
    void everyNoteOfTheTableHasItsFrequencyNumberAndName() {
        for (int tone = 0; tone < 12; tone++) {
            for (int octave = 0; octave <= 8; octave++) {
                int midi = 12 * (octave + 1) + tone;
                assertThat(NoteName.frequencyHz(midi)).isCloseTo(HZ[tone][octave], within(0.001));
                assertThat(NoteName.nearest(HZ[tone][octave])).isEqualTo(midi);
                assertThat(NoteName.of(midi)).isEqualTo(NAMES[tone] + octave);
            }
        }
    }

    /** Cents = 1200·log2(f/f_ref); computed check values. */
    @Test
    void intervalsHaveTheirCents() {
        assertThat(NoteName.cents(1.059463094, 1)).isCloseTo(100, within(1e-4));
        assertThat(NoteName.cents(6, 5)).isCloseTo(315.6413, within(1e-4));
        assertThat(NoteName.cents(5, 4)).isCloseTo(386.3137, within(1e-4));
        assertThat(NoteName.cents(4, 3)).isCloseTo(498.0450, within(1e-4));
        assertThat(NoteName.cents(3, 2)).isCloseTo(701.9550, within(1e-4));
        assertThat(NoteName.cents(2, 1)).isCloseTo(1200, within(1e-4));
        assertThat(NoteName.cents(81, 80)).isCloseTo(21.5063, within(1e-4));
        assertThat(NoteName.cents(442, 440)).isCloseTo(7.8514, within(1e-4));
        assertThat(NoteName.cents(432, 440)).isCloseTo(-31.7667, within(1e-4));
        assertThat(NoteName.cents(415, 440)).isCloseTo(-101.2706, within(1e-4));
        assertThat(NoteName.cents(83.407, 82.407)).isCloseTo(20.8819, within(0.002));
    }

    @Test
    void noFrequencyIsNoNote() {
        assertThat(NoteName.nearest(0)).isEqualTo(NoteName.NONE);
        assertThat(NoteName.of(NoteName.NONE)).isEmpty();
        assertThat(PitchReading.of(0, 0)).isEqualTo(PitchReading.NONE);
    }
}
