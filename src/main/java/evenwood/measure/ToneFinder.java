package evenwood.measure;

import evenwood.sound.Decibels;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Picks the lines that are tones: no mains harmonic, no skirt of one, and steady.
 *
 * <p>How: below the end of the low spectrum a line is the mains's when it joined the {@link MainsFit}; above, where
 * harmonics are hardly told apart, when it stands on a harmonic's place and its neighbours in the family are as strong.
 * Steady is what varies from slot to slot no more than the noise under it makes it, so a string that rings on into the
 * rest is no tone. A whine that wanders is found slot by slot ({@link WanderingTone}). Source: our choice.
 */
final class ToneFinder {
    private static final double LOWEST_HZ = 25;
    private static final double INNER_SHARE = 0.2;
    private static final double STEADY_DB = 1.5;
    private static final double LEAST_OVER_NOISE = 2;
    private static final double LEAST_AT_ANY_TIME = 0.1;
    private static final double SIGMAS = 3;
    private static final double DB_PER_NEPER_OF_POWER = 4.34;

    private final LineSpectrum low;
    private final LineSpectrum high;
    private final SlotSpectra slots;
    private final SlotSpectra all;
    private final Optional<MainsFit> mains;
    private Optional<WanderingTone> wandering = Optional.empty();

    /** @param slots the quiet ones   @param all all slots */
    ToneFinder(LineSpectrum low, LineSpectrum high, SlotSpectra slots, SlotSpectra all, Optional<MainsFit> mains) {
        this.all = all;
        this.low = low;
        this.high = high;
        this.slots = slots;
        this.mains = mains;
    }

    /** Strongest first. */
    List<Tone> find(List<SpectralLine> lowLines, List<SpectralLine> highLines) {
        List<Tone> tones = new ArrayList<>();
        for (SpectralLine line : lowLines) {
            if (line.frequencyHz() > LOWEST_HZ && (mains.isEmpty() || mains.get().isStranger(line, low))) {
                double power = low.excessPower(line.frequencyHz(), low.shape().lobeHz());
                addTone(tones, line, steadyPower(line.frequencyHz()) > 0 ? power : 0);
            }
        }
        boolean[] told = high.noMarks();
        for (SpectralLine line : highLines) {
            boolean comb = isOfComb(line);
            double power = comb ? 0 : steadyPower(line.frequencyHz());
            if (line.frequencyHz() > low.topHz()) {
                addTone(tones, line, power);
            }
            if (comb || power > 0) {
                high.mark(told, line.frequencyHz(), 2 * high.shape().lobeHz());
            }
        }
        wandering = WanderingTone.find(slots, all, told, low.topHz());
        wandering.ifPresent(whine -> tones.add(whine.tone()));
        tones.sort(Comparator.comparingDouble(Tone::levelDbfs).reversed());
        return tones.subList(0, Math.min(tones.size(), NoiseReading.MOST_TONES));
    }

    /** The one that wanders, when {@link #find} found one. */
    Optional<WanderingTone> wandering() {
        return wandering;
    }

    private static void addTone(List<Tone> tones, SpectralLine line, double power) {
        if (power > 0) {
            tones.add(new Tone(line.frequencyHz(), Decibels.ofPower(power)));
        }
    }

    /** Power of a line in the middle one of the slots, or 0 when it is too weak to tell or not steady. */
    private double steadyPower(double hz) {
        double halfHz = high.shape().lobeHz();
        double noise = high.noiseAt(hz) * 2 * halfHz;
        int n = slots.chosen();
        double[] powers = new double[n];
        for (int i = 0; i < n; i++) {
            powers[i] = powerNear(slots.power(i), hz, halfHz);
        }
        Arrays.sort(powers);
        double middle = powers[n / 2] - noise;
        if (middle < LEAST_OVER_NOISE * noise) {
            return 0;
        }
        double soft = Math.max(powers[(int) (INNER_SHARE * n)] - noise, 1e-30);
        double loud = powers[(int) ((1 - INNER_SHARE) * n)] - noise;
        double noiseDb = DB_PER_NEPER_OF_POWER * Math.sqrt(noise / middle / 2);
        return 10 * Math.log10(loud / soft) < STEADY_DB + SIGMAS * noiseDb && isAlwaysThere(hz, middle) ? middle : 0;
    }

    /** A string that rings through the one short rest is steady too, but dies away at last; a tone is there in the stillest moment. */
    private boolean isAlwaysThere(double hz, double power) {
        return all.leastPower(slot -> powerNear(slot, hz, high.shape().lobeHz())) > LEAST_AT_ANY_TIME * power;
    }

    private double powerNear(float[] power, double hz, double halfHz) {
        int from = Math.max(1, (int) Math.ceil((hz - halfHz) / slots.binHz()));
        int to = Math.min(power.length - 1, (int) Math.floor((hz + halfHz) / slots.binHz()));
        double sum = 0;
        for (int k = from; k <= to; k++) {
            sum += power[k];
        }
        return sum;
    }

    private boolean isOfComb(SpectralLine line) {
        double binHz = high.shape().binHz();
        if (mains.isEmpty() || mains.get().missHz(line.frequencyHz()) > binHz) {
            return false;
        }
        int k = mains.get().harmonic(line.frequencyHz());
        for (int other = k - MainsFinder.NEIGHBOURS; other <= k + MainsFinder.NEIGHBOURS; other++) {
            double hz = other * mains.get().frequencyHz();
            LineSpectrum spectrum = hz < low.topHz() ? low : high;
            double neighbour = spectrum.excessPower(hz, hz < low.topHz() ? low.shape().lobeHz() : binHz);
            if (Math.abs(other - k) > 1 && neighbour * MainsFinder.MOST_OVER_NEIGHBOURS > line.power()) {
                return true;
            }
        }
        return false;
    }
}
