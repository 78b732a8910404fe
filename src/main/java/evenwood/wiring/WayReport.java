package evenwood.wiring;

import evenwood.rig.PluggedInput;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One way from the pickup to an input.
 *
 * @param joints        in order; of the thru line only its own
 * @param input         where it ends
 * @param gainDb        the gain counted with: as it stands, or the suggested one when nobody said
 * @param suggestedGainDb puts the hardest peaks 9 dB under full scale, as far as the control reaches
 * @param gainShortDb   how much gain is missing for that: positive is too quiet even with all of it, negative too hot with the least
 * @param usualDbfs     RMS of usual playing against full scale, or an amplifier's full output
 * @param peakDbfs      peaks of the hardest playing
 * @param noiseDbfs     everything from 20 Hz to 20 kHz when nobody plays, unweighted
 */
public record WayReport(List<JointReport> joints, PluggedInput input, double gainDb, double suggestedGainDb, double gainShortDb,
                        double usualDbfs, double peakDbfs, double noiseDbfs) {
    public WayReport {
        joints = List.copyOf(joints);
    }

    public double signalToNoiseDb() {
        return usualDbfs - noiseDbfs;
    }

    public JointReport last() {
        return joints.get(joints.size() - 1);
    }

    public OptionalDouble bassCornerHz() {
        return last().bassCornerHz();
    }
}
