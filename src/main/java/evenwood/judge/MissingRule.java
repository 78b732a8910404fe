package evenwood.judge;

import evenwood.measure.DistortionReading;
import evenwood.measure.TakeReadings;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Says what the take did not show, instead of guessing. Limits: our choice. */
final class MissingRule {
    private static final double ENOUGH_PLAYING_SECONDS = 8;
    private static final double ENOUGH_QUIET_SECONDS = 1;
    private static final int ENOUGH_NOTES = 8;
    private static final double ENOUGH_DYNAMICS_DB = 6;
    /** A soft note's peak stands some 10 dB over its own average; nearer than this it sinks into the noise. */
    private static final double ENOUGH_NOISE_ROOM_DB = 20;

    private MissingRule() { }

    static List<Statement> missing(TakeReadings readings, Optional<ToneComparison> tone, List<Finding> findings) {
        List<Statement> missing = new ArrayList<>();
        if (!readings.hasPlaying()) {
            missing.add(Statement.of(readings.truePeak().isSilent() ? "missing.any-sound" : "missing.any-playing"));
            return missing;
        }
        double playing = readings.activity().playingSeconds();
        if (playing < ENOUGH_PLAYING_SECONDS) {
            missing.add(Statement.of("missing.playing", playing, ENOUGH_PLAYING_SECONDS));
        }
        if (readings.activity().quietSeconds() < ENOUGH_QUIET_SECONDS) {
            missing.add(Statement.of("missing.quiet", readings.activity().quietSeconds()));
        }
        if (readings.dynamics().noteCount() < ENOUGH_NOTES) {
            missing.add(Statement.of("missing.notes", readings.dynamics().noteCount(), ENOUGH_NOTES));
        } else if (readings.dynamics().hardDbfs() - readings.dynamics().softDbfs() < ENOUGH_DYNAMICS_DB) {
            missing.add(Statement.of("missing.dynamics"));
        }
        double noiseRoomDb = readings.dynamics().softDbfs() - readings.noise().floorDbfs();
        if (readings.dynamics().isKnown() && noiseRoomDb < ENOUGH_NOISE_ROOM_DB) {
            missing.add(Statement.of("missing.noise-room", noiseRoomDb, readings.dynamics().rangeDb()));
        }
        if (readings.distortion().verdict() == DistortionReading.Verdict.UNSURE) {
            missing.add(Statement.of("missing.distortion-unsure"));
        }
        if (tone.filter(each -> each.against() == ToneComparison.Against.INSTRUMENT).isPresent() && findings.stream().anyMatch(MissingRule::isUnsureTone)) {
            missing.add(Statement.of("missing.tone-unsure"));
        }
        return missing;
    }

    private static boolean isUnsureTone(Finding finding) {
        return finding.severity() == Severity.SLIGHT && Arrays.stream(ToneRegion.values()).anyMatch(region -> region.fault() == finding.fault());
    }
}
