package evenwood.judge;

import evenwood.measure.DistortionReading;
import evenwood.measure.TakeReadings;
import java.util.List;

/**
 * Full scale reached at the converter, or a stage before it overloaded.
 *
 * <p>How: the meter's own verdict and probability; nothing is said while it is unsure. How much is lost decides the
 * severity: hard clipping is strong as soon as the meter is nearly sure, an onset on the hardest notes only is clear.
 */
final class DistortionRule {
    private static final double SURE_ENOUGH = 0.5;
    private static final double NEARLY_SURE = 0.9;

    private DistortionRule() { }

    static List<Finding> findings(TakeReadings readings) {
        DistortionReading distortion = readings.distortion();
        boolean told = distortion.verdict() == DistortionReading.Verdict.CLIPPED || distortion.verdict() == DistortionReading.Verdict.ONSET;
        if (!told || distortion.stage() == DistortionReading.Stage.NONE || distortion.probability() < SURE_ENOUGH) {
            return List.of();
        }
        boolean converter = distortion.stage() == DistortionReading.Stage.CONVERTER;
        return List.of(new Finding(converter ? Fault.CLIPPING : Fault.OVERDRIVEN, severity(distortion), distortion.probability(),
            converter ? converterEvidence(distortion) : stageEvidence(distortion)));
    }

    private static Severity severity(DistortionReading distortion) {
        if (distortion.probability() < NEARLY_SURE) {
            return Severity.SLIGHT;
        }
        return distortion.verdict() == DistortionReading.Verdict.CLIPPED ? Severity.STRONG : Severity.CLEAR;
    }

    private static Statement converterEvidence(DistortionReading distortion) {
        return Statement.of("clipping.evidence", distortion.clippedSamples());
    }

    private static Statement stageEvidence(DistortionReading distortion) {
        if (distortion.onsetDbfs().isEmpty()) {
            return Statement.of("overdriven.evidence");
        }
        return Statement.of("overdriven.onset", distortion.onsetDbfs().getAsDouble(), distortion.onsetUncertaintyDb().getAsDouble());
    }
}
