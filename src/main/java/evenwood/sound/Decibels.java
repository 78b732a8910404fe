package evenwood.sound;

/**
 * Decibels and plain numbers, both ways.
 *
 * <p>Convention of the whole project: a level in dBFS is plain arithmetic against full scale 1.0, so a full-scale sine
 * has a peak of 0 dBFS and an RMS of −3.01 dBFS (not the AES17 convention, which calls that 0). Silence is −Infinity.
 */
public final class Decibels {
    private Decibels() { }

    /** 20·lg of an amplitude; −Infinity for 0. */
    public static double ofAmplitude(double amplitude) {
        return 20 * Math.log10(amplitude);
    }

    /** 10·lg of a power or mean square; −Infinity for 0. */
    public static double ofPower(double power) {
        return 10 * Math.log10(power);
    }

    public static double toAmplitude(double db) {
        return Math.pow(10, db / 20);
    }

    public static double toPower(double db) {
        return Math.pow(10, db / 10);
    }
}
