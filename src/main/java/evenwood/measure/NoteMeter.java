package evenwood.measure;

import evenwood.sound.AudioBlock;
import java.util.List;

/**
 * The notes that were played: when, how high, how loud.
 *
 * <p>In: mono blocks of any size. Out: {@link NotesReading} for the playing parts of an {@link ActivityReading}, and
 * {@link #pitchNow()} for a tuner.
 * <p>How: {@link AttackSteps} every 5 ms and {@link PitchEstimate} every hop are kept; {@link OnsetPicker} and
 * {@link NoteCutter} make notes of them when asked, looking to both sides of every moment; {@link Strokes} tell the dynamics.
 * <p>Limits: chords are one note without a clear pitch; notes closer than 48 ms are one; pitch from 30 Hz to 4 kHz.
 * <p>Thread: one owner. {@link #accept} never allocates, locks, logs, or touches files.
 */
public final class NoteMeter implements ShortTimeSpectrum.Listener {
    static final int PITCH = 0;
    static final int CLARITY = 1;
    static final int NEW_PITCH = 2;
    static final int NEW_CLARITY = 3;
    /** A frame wholly after an onset, against the last one wholly before it. */
    private static final int FRAMES_ACROSS_ONSET = 3;
    private static final double ONSET_RISE_DB = 12;
    private static final double CLEAR = 0.8;

    private final HopGrid grid;
    private final AttackSteps steps;
    private final PitchEstimate pitch;
    private final PitchEstimate newPitch;
    private final HopHistory pitches;
    private final float[][] spectra;
    private final ShortTimeSpectrum ownSpectrum;

    public NoteMeter(HopGrid grid, int capacityHops) {
        this(grid, capacityHops, false);
    }

    private NoteMeter(HopGrid grid, int capacityHops, boolean sharedSpectrum) {
        this.grid = grid;
        steps = new AttackSteps(grid, capacityHops);
        pitch = new PitchEstimate(grid);
        newPitch = new PitchEstimate(grid);
        pitches = new HopHistory(capacityHops, 4);
        spectra = new float[FRAMES_ACROSS_ONSET][pitch.bins()];
        ownSpectrum = sharedSpectrum ? null : new ShortTimeSpectrum(grid, this);
    }

    /**
     * A meter that makes no spectrum of its own: it must be a listener of one that hears the same blocks as
     * {@link #accept}.
     */
    public static NoteMeter onSharedSpectrum(HopGrid grid, int capacityHops) {
        return new NoteMeter(grid, capacityHops, true);
    }

    /** Hears one block and keeps none of it. [audio thread] */
    public void accept(AudioBlock block) {
        steps.accept(block);
        if (ownSpectrum != null) {
            ownSpectrum.accept(block);
        }
    }

    /** Hears one spectrum. [audio thread] */
    @Override
    public void spectrum(long hop, ShortTimeSpectrum spectrum) {
        while (pitches.endHop() < hop) {
            pitches.append();
        }
        pitches.append();
        pitch.estimate(spectrum);
        pitches.set(hop, PITCH, (float) pitch.frequencyHz());
        pitches.set(hop, CLARITY, (float) pitch.clarity());
        float[] oldest = spectra[(int) (hop % FRAMES_ACROSS_ONSET)];
        if (hop > FRAMES_ACROSS_ONSET && steps.highestRiseDb(hop - 2) >= ONSET_RISE_DB) {
            newPitch.estimateNew(spectrum.power(), oldest);
            pitches.set(hop, NEW_PITCH, (float) newPitch.frequencyHz());
            pitches.set(hop, NEW_CLARITY, (float) newPitch.clarity());
        }
        System.arraycopy(spectrum.power(), 0, oldest, 0, oldest.length);
    }

    /** The notes of all that is remembered. [owner's thread] */
    public NotesReading reading(ActivityReading activity) {
        return new NotesReading(new NoteCutter(grid, steps, pitches, activity).notes(onsets().stream().mapToLong(Onset::step).toArray()));
    }

    /** How soft and how hard those notes were played. [owner's thread] */
    public DynamicsReading dynamics(ActivityReading activity, NotesReading notes) {
        return DynamicsReading.of(new Strokes(grid, steps, onsets(), activity).quantiles(), notes.notes().size());
    }

    private List<Onset> onsets() {
        return new OnsetPicker(steps).onsets();
    }

    /** What sounds in the newest two hops; {@link PitchReading#NONE} when it is not clear. [owner's thread] */
    public PitchReading pitchNow() {
        return pitch.clarity() < CLEAR ? PitchReading.NONE : PitchReading.of(pitch.frequencyHz(), pitch.clarity());
    }

    public void reset() {
        steps.reset();
        pitch.reset();
        pitches.reset();
        if (ownSpectrum != null) {
            ownSpectrum.reset();
        }
    }
}
