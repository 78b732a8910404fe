package evenwood.eq;

import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The bands just beyond those that were heard, so that a shelf is not turned all the way for the sake of its slope: the low string
 * that was not played this time is played the next.
 *
 * <p>How: up to {@value #BEYOND} bands on either side, said to be like the outermost one but known so badly that {@link LikelyTone}
 * lets the neighbours speak for them; each next one counts half as much. Source: our choice.
 */
final class BandsBeyond {
    private static final int BEYOND = 3;
    private static final double HARDLY_KNOWN_DB = 40;
    private static final double EACH_NEXT_WEIGHS = 0.5;
    private static final List<ThirdOctave> ALL = ThirdOctave.FROM_50_HZ_TO_16_KHZ;

    private final ToneDifference heard;
    private final ToneDifference whole;

    BandsBeyond(ToneDifference heard) {
        this.heard = heard;
        List<ToneDifference.Band> bands = new ArrayList<>(heard.bands());
        List<ToneDifference.Band> known = bands.stream().filter(band -> band.weight() > 0 && Double.isFinite(band.uncertaintyDb())).toList();
        if (!known.isEmpty()) {
            add(bands, known.get(0), -1);
            add(bands, known.get(known.size() - 1), 1);
            bands.sort(Comparator.comparing(ToneDifference.Band::band));
        }
        whole = new ToneDifference(bands);
    }

    private static void add(List<ToneDifference.Band> bands, ToneDifference.Band outermost, int step) {
        double weight = outermost.weight();
        for (int i = 1; i <= BEYOND; i++) {
            ThirdOctave band = new ThirdOctave(outermost.band().index() + i * step);
            weight *= EACH_NEXT_WEIGHS;
            if (ALL.contains(band) && bands.stream().noneMatch(other -> other.band().equals(band))) {
                bands.add(new ToneDifference.Band(band, outermost.differenceDb(), HARDLY_KNOWN_DB, outermost.toleranceDb(), weight));
            }
        }
    }

    /** What was heard and what lies beyond, rising. */
    ToneDifference whole() {
        return whole;
    }

    /** Of figures for all bands, those of the bands that were heard. */
    double[] heardOf(double[] all) {
        double[] ofHeard = new double[heard.bands().size()];
        int next = 0;
        for (int i = 0; i < all.length && next < ofHeard.length; i++) {
            if (whole.bands().get(i).band().equals(heard.bands().get(next).band())) {
                ofHeard[next++] = all[i];
            }
        }
        return ofHeard;
    }
}
