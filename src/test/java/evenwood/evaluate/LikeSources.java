package evenwood.evaluate;

import evenwood.measure.TakeReadings;
import evenwood.sound.SoundFormat;
import evenwood.takes.Dynamics;
import evenwood.takes.HeardTone;
import evenwood.takes.PackagedTakes;
import evenwood.takes.PhraseKind;
import evenwood.takes.PlayedInstrument;
import evenwood.takes.SampledBank;
import evenwood.takes.Take;
import evenwood.targets.TargetVoices;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** What the comparison of takes is held against: three songs in three keys on each sampled voice. */
final class LikeSources {
    static final int RATE_HZ = 48_000;
    private static final SoundFormat FORMAT = new SoundFormat(RATE_HZ, 1, 1, 24);
    private static final double ROOM_DBFS = -92;
    private static final Set<SampledBank> MORE_BANKS = EnumSet.of(SampledBank.FREEPATS, SampledBank.RECORDED_NOTES);
    private static final int FIRST_SONG = 801;
    private static final int OTHER_SONG = 601;
    private static final int THIRD_SONG = 701;

    /** @param tuning figures were set on it, so that it proves nothing */
    record Source(String id, PlayedInstrument instrument, boolean tuning, List<Take> songs) {
        double lowestHz() {
            return 440 * Math.pow(2, (instrument.lowestMidi() - 69) / 12.0);
        }
    }

    private LikeSources() { }

    /** Every sampled voice that is a recording of its own. */
    static List<Source> all() {
        List<Source> sources = new ArrayList<>();
        int number = 0;
        for (PlayedInstrument instrument : PlayedInstrument.values()) {
            for (PlayedInstrument.Voice voice : instrument.standIn() ? List.<PlayedInstrument.Voice>of() : instrument.voices()) {
                if (!isOtherBankAgain(instrument, voice)) {
                    sources.add(source(instrument, voice, number));
                }
                number++;
            }
        }
        for (TargetVoices more : TargetVoices.independent()) {
            if (!more.relative() && MORE_BANKS.contains(more.voice().bank())) {
                sources.add(source(more.played(), more.voice(), number++));
            }
        }
        return sources;
    }

    /** Csound's bank has timgm6mb's recordings over again, but for the harp (TargetVoices.independent). */
    private static boolean isOtherBankAgain(PlayedInstrument instrument, PlayedInstrument.Voice voice) {
        return voice.bank() == SampledBank.CSOUND && voice.midiBank() == 0 && instrument != PlayedInstrument.LEVER_HARP;
    }

    private static Source source(PlayedInstrument instrument, PlayedInstrument.Voice voice, int number) {
        Take first = PackagedTakes.catalogue().stream().filter(take -> take.instrument() == instrument && take.voice().equals(voice)).findFirst()
            .orElseGet(() -> Take.soundcheck(instrument, voice, FIRST_SONG + number));
        boolean bowed = instrument.playing() == PlayedInstrument.Playing.BOWED;
        Take third = Take.soundcheck(instrument, voice, THIRD_SONG + number).playing(
            List.of(PhraseKind.MELODY, bowed ? PhraseKind.SCALE : PhraseKind.ARPEGGIO, PhraseKind.MELODY),
            List.of(Dynamics.USUAL, Dynamics.HARD, Dynamics.SOFT));
        List<Take> songs = new ArrayList<>();
        for (Take song : List.of(first, Take.soundcheck(instrument, voice, OTHER_SONG + number), third)) {
            songs.add(song.withRoom(ROOM_DBFS, 10 * number + songs.size()));
        }
        return new Source(first.id(), instrument, voice.bank() == SampledBank.TIM, songs);
    }

    static TakeReadings heard(float[] samples) {
        return HeardTone.readings(samples, FORMAT);
    }
}
