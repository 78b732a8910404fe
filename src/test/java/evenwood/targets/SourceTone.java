package evenwood.targets;

import evenwood.judge.ToneComparison;
import evenwood.measure.BandLevel;
import evenwood.measure.HopGrid;
import evenwood.measure.LongTermSpectrumMeter;
import evenwood.measure.ShortTimeSpectrum;
import evenwood.measure.TakeReadings;
import evenwood.rig.Instrument;
import evenwood.rig.Tap;
import evenwood.rig.ToneTarget;
import evenwood.sound.AudioBlock;
import evenwood.sound.Decibels;
import evenwood.takes.Dynamics;
import evenwood.takes.KeptTone;
import evenwood.takes.PackagedTakes;
import evenwood.takes.PhraseKind;
import evenwood.takes.PlayedInstrument;
import evenwood.takes.PlayedNote;
import evenwood.takes.Take;
import java.util.ArrayList;
import java.util.List;

/**
 * How one voice sounds, note by note: every note of the range, usual and hard, then moved band by band by what whole
 * phrases (scales, melodies high and low, chords, soft and hard) have more or less than their notes one by one.
 *
 * @param voice whose
 * @param notes one row a semitone, against the power of an average note
 */
public record SourceTone(TargetVoices voice, List<ToneTarget.NoteTone> notes) {
    private static final int RATE_HZ = Take.USUAL_SAMPLE_RATE_HZ;
    private static final int BLOCK_FRAMES = 4096;
    private static final double HEARD_SECONDS = 0.58;
    private static final double SILENT_DB = -90;
    private static final int CHROMATIC_SEED = 500;

    public static SourceTone of(TargetVoices voice) {
        List<ToneTarget.NoteTone> rows = TargetMaker.averagePower(List.of(chromatic(voice, Dynamics.USUAL), chromatic(voice, Dynamics.HARD)));
        return new SourceTone(voice, moved(rows, correctionDb(voice, rows)));
    }

    /** Phrases on a voice: full range, low, high, hard, soft, chords; a soundcheck and another. */
    public static List<Take> phrases(TargetVoices voice) {
        int seed = 7000 + 100 * (1 + TargetVoices.all().indexOf(voice));
        Take base = Take.soundcheck(voice.played(), voice.voice(), seed);
        boolean bowed = voice.played().playing() == PlayedInstrument.Playing.BOWED;
        PhraseKind strums = bowed ? PhraseKind.LONG_NOTES : PhraseKind.STRUM;
        PhraseKind arpeggio = bowed ? PhraseKind.LONG_NOTES : PhraseKind.ARPEGGIO;
        return List.of(base, base.withSeed(seed + 1),
            base.withSeed(seed + 2).playing(Dynamics.USUAL, PhraseKind.SCALE, PhraseKind.MELODY, PhraseKind.SCALE),
            base.withSeed(seed + 3).playing(Dynamics.USUAL, PhraseKind.LOW_MELODY, PhraseKind.LOW_MELODY, PhraseKind.LOW_MELODY),
            base.withSeed(seed + 4).playing(Dynamics.USUAL, PhraseKind.HIGH_MELODY, PhraseKind.HIGH_MELODY, PhraseKind.HIGH_MELODY),
            base.withSeed(seed + 5).playing(Dynamics.HARD, strums, PhraseKind.MELODY, arpeggio),
            base.withSeed(seed + 6).playing(Dynamics.SOFT, arpeggio, PhraseKind.MELODY, PhraseKind.SCALE),
            base.withSeed(seed + 7).playing(Dynamics.USUAL, strums, arpeggio));
    }

    public static TakeReadings heard(Take take) {
        return KeptTone.readings(take);
    }

    private static List<ToneTarget.NoteTone> chromatic(TargetVoices voice, Dynamics strength) {
        Take take = Take.soundcheck(voice.played(), voice.voice(), CHROMATIC_SEED).playing(strength, PhraseKind.CHROMATIC);
        float[] samples = PackagedTakes.samples(take);
        HopGrid grid = new HopGrid(RATE_HZ);
        LongTermSpectrumMeter meter = new LongTermSpectrumMeter(grid, samples.length / grid.hopFrames() + 2);
        ShortTimeSpectrum spectrum = new ShortTimeSpectrum(grid, meter);
        AudioBlock block = new AudioBlock(BLOCK_FRAMES);
        for (int start = 0; start < samples.length; start += BLOCK_FRAMES) {
            int frames = Math.min(BLOCK_FRAMES, samples.length - start);
            System.arraycopy(samples, start, block.samples(), 0, frames);
            block.set(start, frames);
            spectrum.accept(block);
        }
        List<ToneTarget.NoteTone> rows = new ArrayList<>();
        for (PlayedNote note : PackagedTakes.notes(take)) {
            rows.add(new ToneTarget.NoteTone(note.frequencyHz(), noteDb(meter, grid, note)));
        }
        return TargetMaker.normalised(rows);
    }

    private static List<Double> noteDb(LongTermSpectrumMeter meter, HopGrid grid, PlayedNote note) {
        long first = (long) Math.ceil(note.startSeconds() / grid.hopSeconds()) + 1;
        long last = (long) ((note.startSeconds() + HEARD_SECONDS) / grid.hopSeconds());
        List<Double> levels = new ArrayList<>();
        for (int band = 0; band < ToneTarget.BANDS; band++) {
            double power = Double.MIN_NORMAL;
            for (long hop = first; hop <= last; hop++) {
                power += meter.bandPower(hop, band) / (last - first + 1);
            }
            levels.add(Math.max(-140, Decibels.ofPower(power)));
        }
        return levels;
    }

    private static double[] correctionDb(TargetVoices voice, List<ToneTarget.NoteTone> rows) {
        Instrument instrument = TargetMaker.instrument(voice.preset(), TargetMaker.target(List.of(rows), ToneTarget.Basis.OWN_SOUND, "one voice"));
        double[] sums = new double[ToneTarget.BANDS];
        int[] counts = new int[ToneTarget.BANDS];
        for (Take take : phrases(voice)) {
            TakeReadings readings = heard(take);
            ToneComparison comparison = ToneComparison.withInstrument(readings, instrument, Tap.PICKUP).orElseThrow();
            for (int band = 0; band < ToneTarget.BANDS; band++) {
                BandLevel level = readings.spectrum().bands().get(band);
                double wanted = comparison.wantedDb().get(level.band());
                if (level.relativeDb() > SILENT_DB && wanted > SILENT_DB) {
                    sums[band] += level.relativeDb() - wanted;
                    counts[band]++;
                }
            }
        }
        for (int band = 0; band < sums.length; band++) {
            sums[band] /= Math.max(1, counts[band]);
        }
        return sums;
    }

    private static List<ToneTarget.NoteTone> moved(List<ToneTarget.NoteTone> rows, double[] byDb) {
        List<ToneTarget.NoteTone> moved = new ArrayList<>();
        for (ToneTarget.NoteTone row : rows) {
            List<Double> levels = new ArrayList<>(row.levelDb());
            for (int band = 0; band < byDb.length; band++) {
                levels.set(band, row.levelDb().get(band) + byDb[band]);
            }
            moved.add(new ToneTarget.NoteTone(row.frequencyHz(), levels));
        }
        return TargetMaker.normalised(moved);
    }
}
