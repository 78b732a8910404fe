package evenwood.targets;

import static evenwood.takes.SampledBank.CSOUND;
import static evenwood.takes.SampledBank.FREEPATS;
import static evenwood.takes.SampledBank.MUSESCORE;
import static evenwood.takes.SampledBank.RECORDED_NOTES;
import static evenwood.takes.SampledBank.TIM;

import evenwood.takes.PlayedInstrument;
import evenwood.takes.SampledBank;
import java.util.ArrayList;
import java.util.List;

/**
 * Which sampled voices stand for which instrument preset. No two of an instrument's sources share a recording that we
 * know of; where the banks have no such instrument, relatives play in its register.
 *
 * @param preset   the instrument preset's id
 * @param played   whose strings, range and phrases
 * @param voice    the sampled voice
 * @param relative whether it is the sound of a relative
 */
public record TargetVoices(String preset, PlayedInstrument played, PlayedInstrument.Voice voice, boolean relative) {
    public static List<TargetVoices> all() {
        List<TargetVoices> all = new ArrayList<>();
        add(all, "steel-string-guitar", PlayedInstrument.STEEL_STRING_GUITAR, false, gm(25), v(FREEPATS, 0, 25), v(RECORDED_NOTES, 0, 25));
        add(all, "nylon-string-guitar", PlayedInstrument.NYLON_STRING_GUITAR, false, gm(24), v(FREEPATS, 0, 24), v(RECORDED_NOTES, 0, 24));
        add(all, "twelve-string-guitar", PlayedInstrument.TWELVE_STRING_GUITAR, false, two(8, 25));
        add(all, "ukulele", PlayedInstrument.UKULELE, false, two(8, 24));
        add(all, "mandolin", PlayedInstrument.MANDOLIN, false, two(16, 25));
        add(all, "octave-mandolin", PlayedInstrument.OCTAVE_MANDOLIN, true, two(16, 25));
        add(all, "bouzouki", PlayedInstrument.BOUZOUKI, true, two(8, 25));
        add(all, "tenor-banjo", PlayedInstrument.TENOR_BANJO, false, gm(105));
        add(all, "five-string-banjo", PlayedInstrument.FIVE_STRING_BANJO, false, gm(105));
        add(all, "violin", PlayedInstrument.VIOLIN, false, gm(40), v(FREEPATS, 0, 40), v(RECORDED_NOTES, 0, 40));
        add(all, "viola", PlayedInstrument.VIOLA, false, gm(41));
        add(all, "cello", PlayedInstrument.CELLO, false, gm(42), v(RECORDED_NOTES, 0, 42));
        add(all, "double-bass", PlayedInstrument.DOUBLE_BASS_PLUCKED, false, gm(32), v(FREEPATS, 0, 32));
        add(all, "double-bass", PlayedInstrument.DOUBLE_BASS_BOWED, false, gm(43), v(RECORDED_NOTES, 0, 43));
        add(all, "lever-harp", PlayedInstrument.LEVER_HARP, false, gm(46), v(RECORDED_NOTES, 0, 46));
        add(all, "mountain-dulcimer", PlayedInstrument.MOUNTAIN_DULCIMER, true, gm(25), v(FREEPATS, 0, 25), v(RECORDED_NOTES, 0, 25));
        add(all, "resonator-guitar", PlayedInstrument.RESONATOR_GUITAR, true, two(8, 26), gm(25));
        add(all, "oud", PlayedInstrument.OUD, true, gm(24), v(FREEPATS, 0, 24), v(RECORDED_NOTES, 0, 24));
        return List.copyOf(all);
    }

    /**
     * Without those of csound's bank that are timgm6mb's recordings over again: their spectra agree within 0.3 dB note by
     * note (double bass 3 dB), where other banks differ by 7 to 18.
     */
    public static List<TargetVoices> independent() {
        List<TargetVoices> all = all();
        return all.stream().filter(voice -> voice.voice().bank() != CSOUND || voice.preset().equals("lever-harp")
            || all.stream().noneMatch(other -> other.voice().bank() == TIM && other.played() == voice.played())
            || voice.voice().midiBank() != 0).toList();
    }

    private static void add(List<TargetVoices> all, String preset, PlayedInstrument played, boolean relative, Object... voices) {
        for (Object each : voices) {
            List<?> some = each instanceof List<?> list ? list : List.of(each);
            some.forEach(voice -> all.add(new TargetVoices(preset, played, (PlayedInstrument.Voice) voice, relative)));
        }
    }

    private static List<PlayedInstrument.Voice> gm(int program) {
        return List.of(v(TIM, 0, program), v(CSOUND, 0, program), v(MUSESCORE, 0, program));
    }

    private static List<PlayedInstrument.Voice> two(int midiBank, int program) {
        return List.of(v(CSOUND, midiBank, program), v(MUSESCORE, midiBank, program));
    }

    private static PlayedInstrument.Voice v(SampledBank bank, int midiBank, int program) {
        return new PlayedInstrument.Voice(bank, midiBank, program);
    }
}
