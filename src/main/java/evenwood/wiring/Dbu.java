package evenwood.wiring;

/** Levels in dBu: against 0.7746 V RMS, the square root of 0.6. Source: ITU-R BS.645, which calls it dBu0s; reference §7.7. */
public final class Dbu {
    public static final double REFERENCE_VOLTS = Math.sqrt(0.6);
    /** dBV = dBu − 2.2185. */
    private static final double DBU_OVER_DBV = -20 * Math.log10(REFERENCE_VOLTS);

    private Dbu() { }

    public static double toVolts(double dbu) {
        return dbu == Double.NEGATIVE_INFINITY ? 0 : REFERENCE_VOLTS * Math.pow(10, dbu / 20);
    }

    /** −Infinity for 0 V. */
    public static double ofVolts(double volts) {
        return 20 * Math.log10(volts / REFERENCE_VOLTS);
    }

    public static double toDbv(double dbu) {
        return dbu - DBU_OVER_DBV;
    }
}
