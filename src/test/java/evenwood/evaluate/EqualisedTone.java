package evenwood.evaluate;

import evenwood.eq.EqChain;
import evenwood.measure.BandLevel;
import evenwood.measure.LongTermSpectrumReading;
import evenwood.measure.NoteName;
import evenwood.measure.NoteSpectraReading;
import evenwood.measure.NoteSpectrum;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.sound.Decibels;
import java.util.ArrayList;
import java.util.List;

/**
 * What the tone meters would have read had a take gone through an equaliser, worked out from their readings of the clean
 * take: an equaliser is linear, so each band and each partial moves by its response. Thousands of faulty takes can be tried
 * that way without being heard.
 *
 * <p>How: a band's power moves by the mean of the power response over nine frequencies in it; a note's partials by the mean
 * over the partials in the band; what was played stays as it was.
 * <p>Limits: which notes were told apart, and which partials stood out, would change a little; ToneShortcutEvaluation holds
 * it against takes that were really filtered.
 */
final class EqualisedTone {
    private static final int FREQUENCIES_A_BAND = 9;
    private static final List<ThirdOctave> BANDS = ThirdOctave.FROM_50_HZ_TO_16_KHZ;

    /** Response in power, so fine over frequency that the next entry will do. */
    private static final double ENTRIES_AN_OCTAVE = 96;
    private static final double LOWEST_HZ = 20;
    private static final double OCTAVES = 10;

    private final double[] response = new double[(int) (OCTAVES * ENTRIES_AN_OCTAVE) + 1];

    private EqualisedTone(EqChain chain, double rateHz) {
        for (int entry = 0; entry < response.length; entry++) {
            response[entry] = Decibels.toPower(chain.responseDb(Math.min(0.499 * rateHz, LOWEST_HZ * Math.pow(2, entry / ENTRIES_AN_OCTAVE)), rateHz));
        }
    }

    static TakeReadings of(TakeReadings clean, EqChain chain) {
        EqualisedTone tone = new EqualisedTone(chain, clean.take().format().sampleRateHz());
        return new TakeReadings(clean.take(), clean.now(), clean.level(), clean.truePeak(), clean.loudness(), clean.activity(), clean.notes(),
            tone.spectra(clean.noteSpectra()), clean.dynamics(), tone.spectrum(clean.spectrum()), clean.noise(), clean.clicks(),
            clean.dropouts(), clean.distortion(), clean.ringing());
    }

    private LongTermSpectrumReading spectrum(LongTermSpectrumReading clean) {
        double[] levels = clean.bands().stream().mapToDouble(level -> level.levelDbfs() + bandDb(level.band())).toArray();
        double whole = 0;
        for (double level : levels) {
            whole += Decibels.toPower(level);
        }
        double wholeDb = Decibels.ofPower(whole);
        List<BandLevel> bands = new ArrayList<>();
        for (int i = 0; i < levels.length; i++) {
            BandLevel level = clean.bands().get(i);
            bands.add(new BandLevel(level.band(), levels[i], levels[i] - wholeDb, level.halfWidthDb(), level.relativeHalfWidthDb(), level.signalToNoiseDb()));
        }
        return new LongTermSpectrumReading(bands, wholeDb, clean.playingSeconds(), clean.blocks(), clean.noiseKnown());
    }

    private double response(double hz) {
        int entry = (int) Math.round(ENTRIES_AN_OCTAVE * Math.log(hz / LOWEST_HZ) / Math.log(2));
        return response[Math.max(0, Math.min(response.length - 1, entry))];
    }

    private double bandDb(ThirdOctave band) {
        double power = 0;
        for (int i = 0; i < FREQUENCIES_A_BAND; i++) {
            double hz = band.lowerHz() * Math.pow(band.upperHz() / band.lowerHz(), (i + 0.5) / FREQUENCIES_A_BAND);
            power += response(hz) / FREQUENCIES_A_BAND;
        }
        return Decibels.ofPower(power);
    }

    private NoteSpectraReading spectra(NoteSpectraReading clean) {
        return new NoteSpectraReading(clean.spectra().stream().map(this::spectrum).toList());
    }

    private NoteSpectrum spectrum(NoteSpectrum clean) {
        double[] gains = new double[BANDS.size()];
        int[] partials = new int[BANDS.size()];
        double pitchHz = NoteName.frequencyHz(clean.pitchNumber());
        for (double hz = pitchHz; hz < BANDS.get(BANDS.size() - 1).upperHz(); hz += pitchHz) {
            int band = ThirdOctave.containing(hz).index() - BANDS.get(0).index();
            if (band >= 0) {
                gains[band] += response(hz);
                partials[band]++;
            }
        }
        double before = 0;
        double after = 0;
        double[] levels = clean.partialDb().clone();
        for (int band = 0; band < levels.length; band++) {
            if (clean.partials()[band] > 0) {
                before += clean.partials()[band] * Decibels.toPower(levels[band]);
                levels[band] += Decibels.ofPower(gains[band] / partials[band]);
                after += clean.partials()[band] * Decibels.toPower(levels[band]);
            }
        }
        double moved = before > 0 ? Decibels.ofPower(after / before) : 0;
        return new NoteSpectrum(clean.pitchNumber(), clean.part(), clean.levelDbfs() + moved, levels, clean.partials());
    }
}
