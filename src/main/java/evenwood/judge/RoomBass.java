package evenwood.judge;

import evenwood.measure.BandLevel;
import evenwood.measure.TakeReadings;
import evenwood.measure.ToneDifference;
import evenwood.rig.Tap;
import java.util.List;
import java.util.Optional;

/**
 * Bass before a microphone that no string makes: the room's, or that of what the speaker stands on.
 *
 * <p>How: while playing there is sound in a whole third octave under the instrument's lowest note, over the noise and at most
 * {@value #MOST_UNDER_DB} dB under everything together. Small rooms have their strongest modes there and up to some 200 Hz, so what then
 * booms against the instrument's usual tone is the room's until the amp stands elsewhere. Source: our choice of limits; that small rooms boom, most
 * in corners and on the floor, is common practice.
 * <p>Limits: footsteps and knocks on the stand come under it too; against another take of the same spot the room is in both and this is not asked.
 *
 * @param belowHz      under this there is no note
 * @param underWholeDb how far the strongest band there lies under everything together, as an amount
 */
public record RoomBass(double belowHz, double underWholeDb) {
    private static final double BELOW_LOWEST_NOTE = 0.85;
    private static final double MOST_UNDER_DB = 20;
    private static final int PLAYED_TIMES = 3;

    /** Empty at other taps, and where nothing of that kind is heard. */
    public static Optional<RoomBass> of(TakeReadings readings, Tap tap, double lowestNoteHz) {
        if (!tap.hearsTheRoom() || !readings.hasPlaying()) {
            return Optional.empty();
        }
        double belowHz = BELOW_LOWEST_NOTE * lowestNoteHz;
        if (readings.notes().notes().stream().filter(note -> note.frequencyHz() < belowHz).count() >= PLAYED_TIMES) {
            return Optional.empty(); // tuned lower, or another instrument: those are notes
        }
        double strongest = readings.spectrum().bands().stream().filter(level -> level.band().upperHz() < belowHz && level.isAboveNoise())
            .mapToDouble(BandLevel::relativeDb).max().orElse(Double.NEGATIVE_INFINITY);
        return strongest > -MOST_UNDER_DB ? Optional.of(new RoomBass(belowHz, Math.max(0, -strongest))) : Optional.empty();
    }

    /** Whether a finding is the room's. */
    public boolean explains(Finding finding) {
        return finding.fault() == Fault.BOOMY && finding.bandHz().isPresent();
    }

    /** The findings, with what booms named as the room's. */
    List<Finding> named(List<Finding> findings) {
        return findings.stream().map(finding -> explains(finding) ? new Finding(finding.fault(), finding.severity(), finding.probability(),
            Statement.of("boomy.room", finding.bandHz().get().lowHz(), finding.bandHz().get().highHz(), belowHz, underWholeDb), finding.bandHz()) : finding).toList();
    }

    /** What is left to be put right by tone controls: all but the bass. */
    public ToneDifference withoutBass(ToneDifference difference, double lowestNoteHz) {
        double highHz = ToneRegion.BOOMY.bandHz(lowestNoteHz).highHz();
        return new ToneDifference(difference.bands().stream().map(band -> band.centreHz() > highHz ? band
            : new ToneDifference.Band(band.band(), band.differenceDb(), band.uncertaintyDb(), band.toleranceDb(), 0)).toList());
    }
}
