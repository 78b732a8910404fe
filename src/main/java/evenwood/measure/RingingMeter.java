package evenwood.measure;

import java.util.ArrayList;
import java.util.List;

/**
 * Tells that the speakers begin to howl, and where, before it hurts.
 *
 * <p>In: the {@link ShortTimeSpectrum}, hop by hop. Out: {@link RingingReading}, every howl that started, in order.
 * <p>How: every peak that has grown lately is held against what a feedback loop does: an even growth in dB at an unmoving
 * frequency with nothing harmonic growing along ({@link HowlSuspect}). One told is followed; if it dies away at once, or
 * grows no further though it is not louder than all playing, it was none and is taken back. Source: features of van Waterschoot and Moonen, JAES 58(11), 2010; loop physics in the
 * project's reference §10.1.
 * <p>Limits: 80 Hz to 10 kHz; detection and false-alarm figures in docs/accuracy.md (RingingEvaluation). At most
 * {@value #MOST_RINGS} are kept.
 * <p>Thread: one owner. {@link #spectrum} allocates only when a howl is told, never locks, logs, or touches files.
 */
public final class RingingMeter implements ShortTimeSpectrum.Listener {
    private static final int MOST_RINGS = 200;
    private static final double LOOK_BACK_SECONDS = 1.2;
    private static final double LOWEST_HZ = 80;
    private static final double HIGHEST_HZ = 10_000;
    private final HopGrid grid;
    private final RecentSpectra spectra;
    private final HowlSuspect suspect;
    private final RisenPeaks peaks;
    private final List<ToldRing> told = new ArrayList<>();
    private double loudestPlayingDb = Double.NEGATIVE_INFINITY;

    public RingingMeter(HopGrid grid) {
        this.grid = grid;
        int bins = grid.hopFrames() + 1;
        double binWidthHz = grid.sampleRateHz() / (2.0 * grid.hopFrames());
        int lowestBin = (int) Math.ceil(LOWEST_HZ / binWidthHz);
        int highestBin = Math.min(bins - 1 - RisenPeaks.FARTHEST_AROUND, (int) (HIGHEST_HZ / binWidthHz));
        peaks = new RisenPeaks(Math.max(RisenPeaks.NEAREST_AROUND, lowestBin), highestBin);
        spectra = new RecentSpectra(grid.hopsIn(LOOK_BACK_SECONDS), Math.min(bins, highestBin + HowlSuspect.FARTHEST_AROUND + 1));
        suspect = new HowlSuspect(spectra, grid.hopSeconds());
    }

    /** Hears one spectrum. [audio thread] */
    @Override
    public void spectrum(long hop, ShortTimeSpectrum spectrum) {
        if (spectra.depth() == spectra.capacity()) {
            loudestPlayingDb = Math.max(loudestPlayingDb, spectra.totalDb(spectra.capacity() - 1));
        }
        spectra.keep(spectrum.power());
        follow(hop);
        for (int i = peaks.find(spectra) - 1; i >= 0; i--) {
            consider(hop, peaks.bin(i));
        }
    }

    /** All howls so far. [owner's thread] */
    public RingingReading reading() {
        return told.isEmpty() ? RingingReading.NONE : new RingingReading(told.stream().map(ToldRing::ring).toList());
    }

    public void reset() {
        spectra.reset();
        told.clear();
        loudestPlayingDb = Double.NEGATIVE_INFINITY;
    }

    private void consider(long hop, int bin) {
        double peakBin = spectra.peakBin(0, bin);
        if (told.size() >= MOST_RINGS || belongsToOneTold(hop, peakBin) || !suspect.howls(bin, loudestPlayingDb)) {
            return;
        }
        double frequencyHz = peakBin * grid.sampleRateHz() / (2.0 * grid.hopFrames());
        double startSeconds = grid.startSeconds(Math.max(0, hop - suspect.growthHops() + 1));
        Ring ring = new Ring(frequencyHz, startSeconds, grid.startSeconds(hop + 1), suspect.growthDbPerSecond());
        told.add(new ToldRing(ring, peakBin, hop, spectra.levelDb(0, bin), suspect.riseDb(),
            suspect.growthDbPerSecond() * grid.hopSeconds()));
    }

    private boolean belongsToOneTold(long hop, double peakBin) {
        for (int i = told.size() - 1; i >= 0; i--) {
            if (told.get(i).explains(peakBin, hop)) {
                return true;
            }
        }
        return false;
    }

    private void follow(long hop) {
        for (int i = told.size() - 1; i >= 0; i--) {
            ToldRing ring = told.get(i);
            if (ring.isFollowed(hop)) {
                double levelDb = spectra.levelDb(0, ring.bin());
                ring.heard(hop, levelDb, levelDb - spectra.surroundingsDb(0, ring.bin(), RisenPeaks.NEAREST_AROUND, RisenPeaks.FARTHEST_AROUND),
                    loudestPlayingDb);
                if (ring.diedAtOnce() || ring.stoppedGrowing()) {
                    told.remove(i);
                }
            }
        }
    }
}
