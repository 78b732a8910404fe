package evenwood.takes;

import evenwood.measure.ActivityMeter;
import evenwood.measure.ActivityReading;
import evenwood.measure.ClickReading;
import evenwood.measure.DistortionReading;
import evenwood.measure.DropoutReading;
import evenwood.measure.HopGrid;
import evenwood.measure.LevelReading;
import evenwood.measure.LongTermSpectrumMeter;
import evenwood.measure.LoudnessReading;
import evenwood.measure.NarrowBandMeter;
import evenwood.measure.NoiseReading;
import evenwood.measure.NoteMeter;
import evenwood.measure.NotesReading;
import evenwood.measure.NowReading;
import evenwood.measure.PitchReading;
import evenwood.measure.RingingReading;
import evenwood.measure.ShortTimeSpectrum;
import evenwood.measure.TakeInfo;
import evenwood.measure.TakeReadings;
import evenwood.measure.TruePeakReading;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundFormat;

/**
 * Lets only those meters hear an array of samples that tone is judged by: what was played, its notes and its bands. All other
 * readings are empty. Hundreds of takes are heard for the targets and the evaluations; this takes a third of the time of
 * {@link Heard}, with the same readings (HeardToneTest).
 */
public final class HeardTone {
    private static final int BLOCK_FRAMES = 4096;
    private static final double SHORTEST_MEMORY_SECONDS = 10;

    private HeardTone() { }

    public static TakeReadings readings(float[] samples, SoundFormat format) {
        HopGrid grid = new HopGrid(format.sampleRateHz());
        double seconds = (double) samples.length / format.sampleRateHz();
        int hops = grid.hopsIn(Math.max(SHORTEST_MEMORY_SECONDS, seconds)) + 2;
        ActivityMeter activity = ActivityMeter.onSharedSpectrum(grid, hops);
        NoteMeter notes = NoteMeter.onSharedSpectrum(grid, hops);
        NarrowBandMeter narrowBands = new NarrowBandMeter(grid, hops);
        LongTermSpectrumMeter spectrum = new LongTermSpectrumMeter(grid, hops);
        ShortTimeSpectrum shortTime = new ShortTimeSpectrum(grid, activity, notes, narrowBands, spectrum);
        AudioBlock block = new AudioBlock(BLOCK_FRAMES);
        for (int start = 0; start < samples.length; start += BLOCK_FRAMES) {
            int frames = Math.min(BLOCK_FRAMES, samples.length - start);
            System.arraycopy(samples, start, block.samples(), 0, frames);
            block.set(start, frames);
            activity.accept(block);
            notes.accept(block);
            shortTime.accept(block);
        }
        ActivityReading active = activity.reading();
        NotesReading played = notes.reading(active);
        return new TakeReadings(new TakeInfo("take", format, seconds), new NowReading(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, PitchReading.NONE),
            LevelReading.SILENCE, TruePeakReading.SILENCE, LoudnessReading.SILENCE, active, played, narrowBands.reading(played, active),
            notes.dynamics(active, played), spectrum.reading(active), NoiseReading.NOTHING, ClickReading.NONE, DropoutReading.NONE, DistortionReading.SILENCE,
            RingingReading.NONE);
    }
}
