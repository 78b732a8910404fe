package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.eq.EqProcessor;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundFormat;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NotewiseDifferenceTest {
    private static final int RATE_HZ = 48_000;
    private static final double REST_SECONDS = 1;
    private static final double NOTE_SECONDS = 0.4;
    private static final EqChain EQUALISER = EqChain.of(EqFilter.lowShelf(200, EqFilter.BUTTERWORTH_Q, 6), EqFilter.peak(500, 1, -6),
        EqFilter.peak(3000, 1, 8));

    @Test
    void aTakeDoesNotDifferFromItself() {
        NoteSpectraReading take = spectra(song(1, 45), 1024);
        ToneDifference difference = NotewiseDifference.between(take, take);
        assertThat(difference.bands()).hasSizeGreaterThan(15);
        assertThat(difference.bands()).allSatisfy(band -> assertThat(band.differenceDb()).isCloseTo(0, within(1e-9)));
    }

    /** What the filters do is known in closed form (audio EQ cookbook, EqFilterReferenceTest). */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(ints = {1, 2, 3})
    void aKnownEqualiserIsFoundThoughAnotherSongIsPlayedInAnotherKey(int seed) {
        ToneDifference difference = NotewiseDifference.between(spectra(through(song(seed, 47)), 1024), spectra(song(seed + 100, 45), 1024));
        List<ToneDifference.Band> bands = difference.bands();
        assertThat(bands).hasSizeGreaterThan(15);
        double mean = bands.stream().mapToDouble(band -> wanted(band) - band.differenceDb()).average().orElseThrow();
        double square = bands.stream().mapToDouble(band -> Math.pow(wanted(band) - band.differenceDb() - mean, 2)).average().orElseThrow();
        assertThat(Math.sqrt(square)).isLessThan(1);
    }

    @Test
    void theUncertaintyHoldsTheErrorInMostBands() {
        int inside = 0;
        int all = 0;
        for (int seed = 1; seed <= 3; seed++) {
            for (ToneDifference.Band band : NotewiseDifference.between(spectra(song(seed, 47), 1024), spectra(song(seed + 100, 45), 1024)).bands()) {
                inside += Math.abs(band.differenceDb()) <= band.uncertaintyDb() ? 1 : 0;
                all++;
            }
        }
        assertThat(inside).isGreaterThan((int) (0.9 * all));
    }

    @Test
    void theOtherWayRoundItIsTheOtherWayRound() {
        NoteSpectraReading one = spectra(through(song(3, 47)), 1024);
        NoteSpectraReading other = spectra(song(4, 45), 1024);
        List<ToneDifference.Band> there = NotewiseDifference.between(one, other).bands();
        List<ToneDifference.Band> back = NotewiseDifference.between(other, one).bands();
        assertThat(back).hasSameSizeAs(there);
        for (int i = 0; i < there.size(); i++) {
            assertThat(back.get(i).band()).isEqualTo(there.get(i).band());
            assertThat(back.get(i).differenceDb()).isCloseTo(-there.get(i).differenceDb(), within(0.01));
        }
    }

    @Test
    void gainDoesNotMatter() {
        float[] song = through(song(3, 47));
        float[] quieter = song.clone();
        for (int i = 0; i < quieter.length; i++) {
            quieter[i] *= 0.2f;
        }
        NoteSpectraReading other = spectra(song(4, 45), 1024);
        List<ToneDifference.Band> loud = NotewiseDifference.between(spectra(song, 1024), other).bands();
        List<ToneDifference.Band> quiet = NotewiseDifference.between(spectra(quieter, 1024), other).bands();
        assertThat(quiet).hasSameSizeAs(loud);
        for (int i = 0; i < loud.size(); i++) {
            assertThat(quiet.get(i).differenceDb()).isCloseTo(loud.get(i).differenceDb(), within(0.2));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 37, 8192})
    void theBlockSizeChangesNothing(int blockFrames) {
        List<NoteSpectrum> usual = spectra(song(1, 45), 1024).spectra();
        List<NoteSpectrum> other = spectra(song(1, 45), blockFrames).spectra();
        assertThat(other).hasSameSizeAs(usual);
        for (int i = 0; i < usual.size(); i++) {
            assertThat(other.get(i).partialDb()).isEqualTo(usual.get(i).partialDb());
        }
    }

    @Test
    void takesWithoutNotesInCommonHaveNoDifference() {
        assertThat(NotewiseDifference.between(spectra(song(1, 40), 1024), spectra(song(2, 72), 1024)).isEmpty()).isTrue();
        assertThat(NotewiseDifference.between(NoteSpectraReading.NONE, spectra(song(2, 45), 1024)).isEmpty()).isTrue();
    }

    private static double wanted(ToneDifference.Band band) {
        return EQUALISER.responseDb(band.centreHz(), RATE_HZ);
    }

    private static float[] through(float[] song) {
        float[] changed = song.clone();
        new EqProcessor(EQUALISER.withGainDb(-10), RATE_HZ).process(changed, changed.length);
        return changed;
    }

    /** Plucked harmonic notes on one string of a body with three resonances, at random out of two octaves of a major scale. */
    private static float[] song(int seed, int lowestMidi) {
        int[] major = {0, 2, 4, 5, 7, 9, 11, 12, 14, 16, 17, 19, 21, 23, 24};
        SplittableRandom random = new SplittableRandom(seed);
        int notes = 45;
        float[] song = new float[(int) ((2 * REST_SECONDS + notes * NOTE_SECONDS) * RATE_HZ)];
        for (int note = 0; note < notes; note++) {
            double pitchHz = NoteName.frequencyHz(lowestMidi + major[random.nextInt(major.length)]);
            double amplitude = 0.1 * Math.pow(10, -random.nextDouble() * 0.6);
            int start = (int) ((REST_SECONDS + note * NOTE_SECONDS) * RATE_HZ);
            for (int k = 1; k * pitchHz < 14_000; k++) {
                addPartial(song, start, k * pitchHz, amplitude * body(k * pitchHz) / (k * Math.sqrt(k)), 3 + 0.0015 * k * pitchHz);
            }
        }
        for (int i = 0; i < song.length; i++) {
            song[i] += (float) (1e-5 * (random.nextDouble() - 0.5));
        }
        return song;
    }

    private static void addPartial(float[] song, int start, double hz, double amplitude, double decayPerSecond) {
        int frames = (int) (NOTE_SECONDS * RATE_HZ);
        double turnedRe = Math.exp(-decayPerSecond / RATE_HZ) * Math.cos(2 * Math.PI * hz / RATE_HZ);
        double turnedIm = Math.exp(-decayPerSecond / RATE_HZ) * Math.sin(2 * Math.PI * hz / RATE_HZ);
        double re = amplitude;
        double im = 0;
        for (int i = 0; i < frames; i++) {
            double seconds = (double) i / RATE_HZ;
            song[start + i] += (float) (Math.min(1, Math.min(seconds / 0.002, (NOTE_SECONDS - seconds) / 0.02)) * im);
            double next = re * turnedRe - im * turnedIm;
            im = re * turnedIm + im * turnedRe;
            re = next;
        }
    }

    private static double body(double hz) {
        double sum = 0.5;
        for (double centre : new double[] {110, 210, 420}) {
            double off = Math.log(hz / centre) / 0.15;
            sum += 1 / (1 + off * off);
        }
        return sum;
    }

    private static NoteSpectraReading spectra(float[] samples, int blockFrames) {
        TakeMeters meters = new TakeMeters(SoundFormat.mono(RATE_HZ), (double) samples.length / RATE_HZ);
        AudioBlock block = new AudioBlock(blockFrames);
        for (int start = 0; start < samples.length; start += blockFrames) {
            int frames = Math.min(blockFrames, samples.length - start);
            System.arraycopy(samples, start, block.samples(), 0, frames);
            block.set(start, frames);
            meters.accept(block);
        }
        return meters.readings("song").noteSpectra();
    }
}
