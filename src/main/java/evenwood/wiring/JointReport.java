package evenwood.wiring;

import java.util.OptionalDouble;

/**
 * What is so where one thing is plugged into the next, measured at the socket that takes the signal.
 *
 * @param joint        which
 * @param response     level there against the pickup's own voltage
 * @param usualDbu     RMS of usual playing
 * @param peakDbu      peaks of the hardest playing
 * @param headroomDb   from there to the most the socket takes; empty when nothing limits it
 * @param noiseDbu     noise there from 20 Hz to 20 kHz, unweighted
 * @param sourceOhms   impedance looking back at 1 kHz
 * @param loadOhms     impedance looking on at 1 kHz
 * @param loadingDb    what the load takes away at 1 kHz
 * @param bassCornerHz where the bass is 3 dB down; empty when that is under 1 Hz
 * @param cableLevelDb what this joint's cable takes away at 1 kHz; positive is loss
 * @param cableTrebleDb what it takes away at 10 kHz beyond that
 */
public record JointReport(Joint joint, Response response, double usualDbu, double peakDbu, OptionalDouble headroomDb, double noiseDbu,
                          double sourceOhms, double loadOhms, double loadingDb, OptionalDouble bassCornerHz, double cableLevelDb,
                          double cableTrebleDb) {
    public double signalToNoiseDb() {
        return usualDbu - noiseDbu;
    }
}
