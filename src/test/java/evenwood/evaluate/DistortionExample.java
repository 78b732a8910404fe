package evenwood.evaluate;

import evenwood.measure.DistortionReading;

/**
 * One take through one stage, and what the meter said.
 *
 * @param instrument whose take it was
 * @param kind       which stage, or {@link StageKind#CLEAN}
 * @param driveDb    how far its highest peak was pushed beyond, or short; 0 when clean
 * @param shortDb    how much the hardest tenth of the attacks came out short
 * @param onsetDbfs  the true onset at this tap; NaN when clean
 */
record DistortionExample(String instrument, StageKind kind, double driveDb, double shortDb, double onsetDbfs, DistortionReading reading) {
    boolean isClean() {
        return kind == StageKind.CLEAN;
    }

    boolean isAudible() {
        return !isClean() && shortDb >= HardestPlaying.AUDIBLE_DB;
    }

    boolean isTold() {
        return reading.verdict() == DistortionReading.Verdict.ONSET || reading.verdict() == DistortionReading.Verdict.CLIPPED;
    }

    /** Whether the judge calls it clear or strong: from 0.9 on (judge.DistortionRule). */
    boolean isClear() {
        return isTold() && reading.probability() >= 0.9;
    }

    boolean isStageRight() {
        return reading.stage() == (kind == StageKind.CONVERTER ? DistortionReading.Stage.CONVERTER : DistortionReading.Stage.BEFORE_CONVERTER);
    }
}
