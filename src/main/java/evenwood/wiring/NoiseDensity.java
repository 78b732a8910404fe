package evenwood.wiring;

import java.util.OptionalDouble;

/**
 * Noise as power density, V²/Hz.
 *
 * <p>Source: Nyquist's theorem, 4·k·T·R, with k exact since the SI of 2019; 20 °C as in the reference tables.
 */
final class NoiseDensity {
    static final double BANDWIDTH_HZ = 20_000 - 20;
    private static final double BOLTZMANN = 1.380649e-23;
    private static final double ROOM_KELVIN = 293.15;

    private NoiseDensity() { }

    static double thermal(double ohms) {
        return 4 * BOLTZMANN * ROOM_KELVIN * Math.max(0, ohms);
    }

    static double ofNanovolts(double nanovoltsPerRootHz) {
        return Math.pow(nanovoltsPerRootHz * 1e-9, 2);
    }

    /** Spread evenly over the band; −Infinity is none. */
    static double ofDbu(double dbu) {
        return Math.pow(Dbu.toVolts(dbu), 2) / BANDWIDTH_HZ;
    }

    /** The amplifier's own part of an equivalent input noise: without what the source resistor of that measurement made. */
    static double ofEin(OptionalDouble einDbu, double sourceOhms) {
        return einDbu.isEmpty() ? 0 : Math.max(0, ofDbu(einDbu.getAsDouble()) - thermal(sourceOhms));
    }
}
