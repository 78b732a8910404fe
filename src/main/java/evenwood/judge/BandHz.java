package evenwood.judge;

/** A stretch of the frequency axis, in hertz. */
public record BandHz(double lowHz, double highHz) {
    public BandHz {
        if (!(lowHz >= 0 && highHz >= lowHz)) {
            throw new IllegalArgumentException("band: lowHz=" + lowHz + ", highHz=" + highHz + ", but low must not exceed high");
        }
    }
}
