package evenwood.takes;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The recipe of a take: who plays what, how hard, at which level, through how quiet a chain. The same recipe always
 * gives the same samples.
 *
 * @param instrument   what is played
 * @param voice        the sampled voice that plays it
 * @param kinds        what each phrase is; 1.5 s of rest stand before each
 * @param dynamics     how hard each phrase is played, as many as there are kinds
 * @param seed         decides key, notes and humanised timing
 * @param sampleRateHz 8000 to 96000, what the renderer offers
 * @param peakDbfs     wanted sample peak of the playing, before any noise
 * @param roomDbfs     RMS of the pickup chain's noise; −Infinity for digital silence between the notes
 * @param roomSeed     seed of that noise
 */
public record Take(PlayedInstrument instrument, PlayedInstrument.Voice voice, List<PhraseKind> kinds, List<Dynamics> dynamics,
                   int seed, int sampleRateHz, double peakDbfs, double roomDbfs, int roomSeed) {
    public static final int USUAL_SAMPLE_RATE_HZ = 48_000;
    public static final double USUAL_PEAK_DBFS = -8;

    public Take {
        if (kinds.isEmpty() || kinds.size() != dynamics.size()) {
            throw new IllegalArgumentException("take: " + kinds.size() + " phrases but " + dynamics.size() + " dynamics; give one for each");
        }
        kinds = List.copyOf(kinds);
        dynamics = List.copyOf(dynamics);
    }

    /** Soft, usual and hard phrases and a tune at the usual strength: what the guided check asks for, about half a minute. */
    public static Take soundcheck(PlayedInstrument instrument, PlayedInstrument.Voice voice, int seed) {
        boolean bowed = instrument.playing() == PlayedInstrument.Playing.BOWED;
        List<PhraseKind> kinds = bowed
            ? List.of(PhraseKind.LONG_NOTES, PhraseKind.SCALE, PhraseKind.LONG_NOTES, PhraseKind.MELODY)
            : List.of(PhraseKind.ARPEGGIO, PhraseKind.SCALE, PhraseKind.STRUM, PhraseKind.MELODY);
        return new Take(instrument, voice, kinds, List.of(Dynamics.SOFT, Dynamics.USUAL, Dynamics.HARD, Dynamics.USUAL),
            seed, USUAL_SAMPLE_RATE_HZ, USUAL_PEAK_DBFS, Double.NEGATIVE_INFINITY, 0);
    }

    /** Other phrases, all of one strength. */
    public Take playing(Dynamics strength, PhraseKind... what) {
        List<Dynamics> strengths = new ArrayList<>();
        for (int i = 0; i < what.length; i++) {
            strengths.add(strength);
        }
        return new Take(instrument, voice, List.of(what), strengths, seed, sampleRateHz, peakDbfs, roomDbfs, roomSeed);
    }

    /** Other phrases and strengths. */
    public Take playing(List<PhraseKind> what, List<Dynamics> howHard) {
        return new Take(instrument, voice, what, howHard, seed, sampleRateHz, peakDbfs, roomDbfs, roomSeed);
    }

    /** Another performance: other key, notes and timing. */
    public Take withSeed(int other) {
        return new Take(instrument, voice, kinds, dynamics, other, sampleRateHz, peakDbfs, roomDbfs, roomSeed);
    }

    public Take atRate(int otherSampleRateHz) {
        return new Take(instrument, voice, kinds, dynamics, seed, otherSampleRateHz, peakDbfs, roomDbfs, roomSeed);
    }

    public Take withPeak(double otherPeakDbfs) {
        return new Take(instrument, voice, kinds, dynamics, seed, sampleRateHz, otherPeakDbfs, roomDbfs, roomSeed);
    }

    /** With the noise of a real chain, which is never digitally silent: white and a little pink, this RMS in all. */
    public Take withRoom(double noiseDbfs, int noiseSeed) {
        return new Take(instrument, voice, kinds, dynamics, seed, sampleRateHz, peakDbfs, noiseDbfs, noiseSeed);
    }

    /** Short name for tables and test names. */
    public String id() {
        String preset = voice.midiBank() + "-" + voice.program();
        String room = roomDbfs == Double.NEGATIVE_INFINITY ? "" : " room" + Math.round(roomDbfs);
        return instrument.id() + " " + voice.bank().name().toLowerCase(Locale.ROOT) + ":" + preset + " #" + seed + room;
    }

    @Override
    public String toString() {
        return id();
    }
}
