package evenwood.takes;

import static evenwood.takes.SampledBank.CSOUND;
import static evenwood.takes.SampledBank.MUSESCORE;
import static evenwood.takes.SampledBank.TIM;

import java.util.List;
import java.util.Locale;

/**
 * An acoustic instrument the takes are played on: its strings, its range, and which sampled voices stand for it.
 *
 * <p>Open strings and ranges as MIDI notes (60 = middle C): the project's instrument table (ISO 16 pitch, common
 * practice); sitar, shamisen, koto and the pizzicato section are not in it and are common practice from memory. Where
 * {@link #standIn} is true the banks have no such instrument and a relative plays in its register.
 */
public enum PlayedInstrument {
    STEEL_STRING_GUITAR(Playing.PLUCKED, false, 40, 84, strings(40, 45, 50, 55, 59, 64), gm(25)),
    NYLON_STRING_GUITAR(Playing.PLUCKED, false, 40, 83, strings(40, 45, 50, 55, 59, 64), gm(24)),
    TWELVE_STRING_GUITAR(Playing.PLUCKED, false, 40, 84, strings(40, 45, 50, 55, 59, 64), List.of(voice(CSOUND, 8, 25), voice(MUSESCORE, 8, 25))),
    MUTED_STEEL_GUITAR(Playing.PLUCKED, false, 40, 84, strings(40, 45, 50, 55, 59, 64), gm(28)),
    UKULELE(Playing.PLUCKED, false, 60, 84, strings(67, 60, 64, 69), List.of(voice(CSOUND, 8, 24), voice(MUSESCORE, 8, 24))),
    BARITONE_UKULELE(Playing.PLUCKED, true, 50, 81, strings(50, 55, 59, 64), List.of(voice(CSOUND, 8, 24), voice(MUSESCORE, 8, 24))),
    MANDOLIN(Playing.PLUCKED, false, 55, 93, strings(55, 62, 69, 76), List.of(voice(CSOUND, 16, 25), voice(MUSESCORE, 16, 25))),
    OCTAVE_MANDOLIN(Playing.PLUCKED, true, 43, 81, strings(43, 50, 57, 64), List.of(voice(CSOUND, 16, 25), voice(MUSESCORE, 16, 25))),
    BOUZOUKI(Playing.PLUCKED, true, 43, 84, strings(43, 50, 57, 62), List.of(voice(CSOUND, 8, 25), voice(MUSESCORE, 8, 25))),
    FIVE_STRING_BANJO(Playing.PLUCKED, false, 50, 84, strings(67, 50, 55, 59, 62), gm(105)),
    TENOR_BANJO(Playing.PLUCKED, false, 48, 91, strings(48, 55, 62, 69), gm(105)),
    RESONATOR_GUITAR(Playing.PLUCKED, true, 43, 86, strings(43, 47, 50, 55, 59, 62), List.of(voice(CSOUND, 8, 26), voice(MUSESCORE, 8, 26))),
    OUD(Playing.PLUCKED, true, 41, 72, strings(41, 45, 50, 55, 60), List.of(voice(TIM, 0, 106), voice(MUSESCORE, 0, 24))),
    SITAR(Playing.PLUCKED, false, 48, 79, strings(48, 55, 60), gm(104)),
    SHAMISEN(Playing.PLUCKED, false, 50, 79, strings(50, 57, 62), gm(106)),
    KOTO(Playing.PLUCKED, false, 50, 86, strings(50, 55, 60, 64, 69), gm(107)),
    LEVER_HARP(Playing.PLUCKED, false, 36, 93, strings(36, 43, 48, 55, 60, 67), gm(46)),
    HAMMERED_DULCIMER(Playing.PLUCKED, false, 55, 79, strings(55, 60, 64, 67), gm(15)),
    MOUNTAIN_DULCIMER(Playing.PLUCKED, true, 50, 86, strings(50, 57, 62), List.of(voice(CSOUND, 8, 25), voice(MUSESCORE, 0, 25))),
    VIOLIN(Playing.BOWED, false, 55, 93, strings(55, 62, 69, 76), gm(40)),
    FIDDLE(Playing.BOWED, false, 55, 88, strings(55, 62, 69, 76), gm(110)),
    VIOLA(Playing.BOWED, false, 48, 86, strings(48, 55, 62, 69), gm(41)),
    CELLO(Playing.BOWED, false, 36, 74, strings(36, 43, 50, 57), gm(42)),
    DOUBLE_BASS_BOWED(Playing.BOWED, false, 28, 60, strings(28, 33, 38, 43), gm(43)),
    DOUBLE_BASS_PLUCKED(Playing.PLUCKED, false, 28, 62, strings(28, 33, 38, 43), gm(32)),
    VIOLIN_PLUCKED(Playing.PLUCKED, false, 55, 88, strings(55, 62, 69, 76), gm(45));

    /** How it is sounded, which decides how phrases are written and when notes are stopped. */
    public enum Playing { PLUCKED, BOWED }

    /** One preset of one bank. */
    public record Voice(SampledBank bank, int midiBank, int program) { }

    private final Playing playing;
    private final boolean standIn;
    private final int lowestMidi;
    private final int highestMidi;
    private final int[] openStrings;
    private final List<Voice> voices;

    PlayedInstrument(Playing playing, boolean standIn, int lowestMidi, int highestMidi, int[] openStrings, List<Voice> voices) {
        this.playing = playing;
        this.standIn = standIn;
        this.lowestMidi = lowestMidi;
        this.highestMidi = highestMidi;
        this.openStrings = openStrings;
        this.voices = voices;
    }

    /** The id as the project's presets spell it, where there is such a preset. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public Playing playing() {
        return playing;
    }

    public boolean standIn() {
        return standIn;
    }

    public int lowestMidi() {
        return lowestMidi;
    }

    public int highestMidi() {
        return highestMidi;
    }

    public int[] openStrings() {
        return openStrings.clone();
    }

    public List<Voice> voices() {
        return voices;
    }

    private static int[] strings(int... midi) {
        return midi;
    }

    /** The General MIDI program, which every bank has. */
    private static List<Voice> gm(int program) {
        return List.of(voice(TIM, 0, program), voice(CSOUND, 0, program), voice(MUSESCORE, 0, program));
    }

    private static Voice voice(SampledBank bank, int midiBank, int program) {
        return new Voice(bank, midiBank, program);
    }
}
