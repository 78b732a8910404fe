package evenwood.measure;

/**
 * The common clock of every meter that remembers a take over time: the take is cut into hops of about 43 ms.
 *
 * <p>Hop {@code k} covers frames {@code k·hopFrames} up to, not including, {@code (k+1)·hopFrames}, counted from the
 * first frame of the take. A hop counts only when it is complete. All meters use the same grid, so the playing-or-quiet
 * decision of one can be applied to what another measured.
 *
 * <p>Our choice: a power of two, because the spectrum of two hops is taken by a fast Fourier transform. 2048 frames
 * from 44.1 to 48 kHz, 4096 to 96 kHz, 256 at 8 kHz.
 */
public record HopGrid(int sampleRateHz) {
    private static final double WANTED_SECONDS = 0.0427;

    public HopGrid {
        if (sampleRateHz < 1) {
            throw new IllegalArgumentException("hop grid: sampleRateHz=" + sampleRateHz + ", but it must be positive");
        }
    }

    public int hopFrames() {
        return 1 << Math.round((float) (Math.log(sampleRateHz * WANTED_SECONDS) / Math.log(2)));
    }

    public double hopSeconds() {
        return (double) hopFrames() / sampleRateHz;
    }

    /** How many whole hops lie in a stretch, rounded up so that nothing is lost. */
    public int hopsIn(double seconds) {
        return (int) Math.ceil(seconds / hopSeconds());
    }

    public double startSeconds(long hop) {
        return hop * hopSeconds();
    }
}
