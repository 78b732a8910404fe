package evenwood.measure;

import evenwood.sound.Decibels;
import java.util.Arrays;
import java.util.Optional;

/**
 * A whine that wanders with the load of its supply, by some per cent, found slot by slot.
 *
 * <p>How: in each slot the highest peak over its neighbourhood that is no steady line; when most quiet slots have one,
 * near one another and about equally strong, they are one tone. Its level is the mean of their powers; its frequency the
 * mean of the centres in all slots that show it, also under the playing. Source: our choice; switch-mode whine moves with
 * load (reference §8.3).
 * <p>Limits: above the low end only (2.2 kHz), one such tone, from four quiet slots (0.7 s) on.
 *
 * @param tone   what it is
 * @param lowHz  lowest centre of a quiet slot
 * @param highHz highest
 */
record WanderingTone(Tone tone, double lowHz, double highHz) {
    private static final int LEAST_SLOTS = 4;
    private static final double LEAST_SHARE = 0.7;
    /** Of the gamma distribution of a slot's bins (shape 3.8), beyond this ratio lies one in some millions. */
    private static final double OVER_NEIGHBOURS = 6;
    private static final double EDGE_OVER_NEIGHBOURS = 2;
    private static final int NEIGHBOUR_BINS = 64;
    private static final int REACH_BINS = 24;
    private static final double WIDEST_SPREAD = 0.05;
    private static final double ALIKE_DB = 4;

    /** One slot's peak. */
    private record Peak(double hz, double power) { }

    /**
     * @param quiet  the slots in which nobody plays
     * @param all    all slots
     * @param told   bins of lines that have been told already
     */
    static Optional<WanderingTone> find(SlotSpectra quiet, SlotSpectra all, boolean[] told, double lowestHz) {
        Peak[] peaks = peaks(quiet, told, lowestHz, quiet.topHz());
        if (quiet.chosen() < LEAST_SLOTS || peaks.length < LEAST_SHARE * quiet.chosen()) {
            return Optional.empty();
        }
        double middleHz = Arrays.stream(peaks).mapToDouble(Peak::hz).sorted().toArray()[peaks.length / 2];
        double middlePower = Arrays.stream(peaks).mapToDouble(Peak::power).sorted().toArray()[peaks.length / 2];
        Peak[] alike = alike(peaks, middleHz, middlePower);
        if (alike.length < LEAST_SHARE * quiet.chosen()) {
            return Optional.empty();
        }
        Peak[] everywhere = alike(peaks(all, told, middleHz * (1 - WIDEST_SPREAD), middleHz * (1 + WIDEST_SPREAD)), middleHz, middlePower);
        double power = Arrays.stream(alike).mapToDouble(Peak::power).average().orElseThrow();
        double hz = Arrays.stream(everywhere.length > alike.length ? everywhere : alike).mapToDouble(Peak::hz).average().orElseThrow();
        return Optional.of(new WanderingTone(new Tone(hz, Decibels.ofPower(power)),
            Arrays.stream(alike).mapToDouble(Peak::hz).min().orElseThrow(), Arrays.stream(alike).mapToDouble(Peak::hz).max().orElseThrow()));
    }

    private static Peak[] alike(Peak[] peaks, double hz, double power) {
        return Arrays.stream(peaks).filter(peak -> Math.abs(peak.hz / hz - 1) < WIDEST_SPREAD
            && Math.abs(10 * Math.log10(peak.power / power)) < ALIKE_DB).toArray(Peak[]::new);
    }

    private static Peak[] peaks(SlotSpectra slots, boolean[] told, double lowestHz, double highestHz) {
        Peak[] peaks = new Peak[slots.chosen()];
        int count = 0;
        for (int i = 0; i < slots.chosen(); i++) {
            Peak peak = peak(slots, slots.power(i), told, lowestHz, highestHz);
            if (peak != null) {
                peaks[count++] = peak;
            }
        }
        return Arrays.copyOf(peaks, count);
    }

    /** Centre and power of the highest peak, or null when nothing stands out. */
    private static Peak peak(SlotSpectra slots, float[] power, boolean[] told, double lowestHz, double highestHz) {
        int best = -1;
        int from = Math.max(1, (int) (lowestHz / slots.binHz()));
        int to = Math.min(power.length - 2, (int) (highestHz / slots.binHz()));
        for (int k = from; k <= to; k++) {
            if (!told[k] && (best < 0 || power[k] > power[best])) {
                best = k;
            }
        }
        double noise = best < 0 ? 0 : neighbours(power, best);
        if (best < 0 || power[best] <= OVER_NEIGHBOURS * noise) {
            return null;
        }
        double sum = 0;
        double moment = 0;
        for (int k = Math.max(1, best - REACH_BINS); k <= Math.min(power.length - 2, best + REACH_BINS); k++) {
            if (!told[k] && power[k] > EDGE_OVER_NEIGHBOURS * noise) {
                sum += power[k] - noise;
                moment += (power[k] - noise) * k;
            }
        }
        return new Peak(moment / sum * slots.binHz(), sum);
    }

    /** The middle one of the bins around, near enough to the mean of their noise. */
    private static double neighbours(float[] power, int centre) {
        float[] around = Arrays.copyOfRange(power, Math.max(1, centre - NEIGHBOUR_BINS), Math.min(power.length, centre + NEIGHBOUR_BINS + 1));
        Arrays.sort(around);
        return around[around.length / 2];
    }
}
