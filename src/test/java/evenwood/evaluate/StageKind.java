package evenwood.evaluate;

import evenwood.takes.Faults;
import evenwood.takes.Injected;
import evenwood.takes.Overdrive;

/** Which stage overloads, and how. */
enum StageKind {
    CLEAN, CONVERTER, HARD_SAMPLED, HARD_ANALOGUE, ONE_SIDED, TANH, CUBIC, DIODE;

    /** How many amounts are tried of each take: fewer of those that are computed at four times the rate. */
    int amountsEach() {
        return switch (this) {
            case CLEAN -> 0;
            case HARD_ANALOGUE, ONE_SIDED -> 1;
            default -> 2;
        };
    }

    /** What the stage makes of a take whose highest peak is driven so far. Not for CLEAN. */
    Injected<Overdrive.Truth> drive(float[] take, int sampleRateHz, double driveDb, int bits) {
        return switch (this) {
            case CLEAN -> throw new IllegalArgumentException("a clean stage is not driven");
            case CONVERTER -> Faults.converterClip(take, driveDb, bits);
            case HARD_SAMPLED -> Faults.stageClip(take, sampleRateHz, driveDb, 0, 0, Overdrive.Reality.SAMPLED);
            case HARD_ANALOGUE -> Faults.stageClip(take, sampleRateHz, driveDb, 0, 0, Overdrive.Reality.ANALOGUE);
            case ONE_SIDED -> Faults.oneSidedClip(take, sampleRateHz, driveDb, 0, Overdrive.Reality.ANALOGUE);
            case TANH -> Faults.saturation(take, sampleRateHz, Overdrive.Curve.TANH, driveDb, 0, Overdrive.Reality.SAMPLED);
            case CUBIC -> Faults.saturation(take, sampleRateHz, Overdrive.Curve.CUBIC, driveDb, 0, Overdrive.Reality.SAMPLED);
            case DIODE -> Faults.saturation(take, sampleRateHz, Overdrive.Curve.DIODE, driveDb, 0, Overdrive.Reality.SAMPLED);
        };
    }
}
