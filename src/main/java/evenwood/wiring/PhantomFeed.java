package evenwood.wiring;

import java.util.Arrays;

/**
 * Phantom power as a microphone input gives it: the same voltage on both signal wires, each through its resistor.
 *
 * <p>Source: IEC 61938 (voltages, tolerances, resistors, greatest currents), from a published summary; reference §7.6.
 */
public enum PhantomFeed {
    P48(48, 4, 6810, 10), P24(24, 4, 1200, 10), P12(12, 1, 680, 15);

    private final double volts;
    private final double toleranceVolts;
    private final double ohmsEachLeg;
    private final double mostMilliamperes;

    PhantomFeed(double volts, double toleranceVolts, double ohmsEachLeg, double mostMilliamperes) {
        this.volts = volts;
        this.toleranceVolts = toleranceVolts;
        this.ohmsEachLeg = ohmsEachLeg;
        this.mostMilliamperes = mostMilliamperes;
    }

    /** The one whose voltage is nearest. */
    public static PhantomFeed ofVolts(double volts) {
        return Arrays.stream(values()).min(java.util.Comparator.comparingDouble(feed -> Math.abs(feed.volts - volts))).orElseThrow();
    }

    public double volts() {
        return volts;
    }

    public double leastVolts() {
        return volts - toleranceVolts;
    }

    public double mostVolts() {
        return volts + toleranceVolts;
    }

    public double mostMilliamperes() {
        return mostMilliamperes;
    }

    /** What is left at the box: the current comes through both resistors side by side. */
    public double voltsLeft(double milliamperes) {
        return volts - milliamperes / 1000 * ohmsEachLeg / 2;
    }

    /** What flows when one signal wire touches the screen. */
    public double milliamperesShorted() {
        return volts / ohmsEachLeg * 1000;
    }
}
