package evenwood.measure;

import evenwood.sound.Decibels;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Tones that sound through playing that never stops.
 *
 * <p>How: lines in what is always there (the level that few slots go under) that half of the slots do not exceed either:
 * notes come and go, a tone does not. Source: our choice.
 * <p>Limits: a tone must stand 10 dB out of what is always played around it; a bowed drone would have to be held within
 * 1 dB through half of the take to pass for one.
 */
final class SteadyTones {
    private static final double LOWEST_HZ = 300;
    private static final double OVER = 10;
    private static final double STEADY_RATIO = Math.pow(10, 0.1);

    private SteadyTones() { }

    /** @param low as {@code spectrum}, before it was scaled up by {@code scale}   @param middle what half of the slots stay under */
    static List<Tone> find(LineSpectrum spectrum, double[] low, double[] middle, Optional<LockedMains> mains) {
        List<Tone> tones = new ArrayList<>();
        double binHz = spectrum.shape().binHz();
        for (SpectralLine line : spectrum.lines()) {
            int k = (int) Math.round(line.frequencyHz() / binHz);
            if (line.frequencyHz() < LOWEST_HZ || line.overNoise() < OVER || middle[k] > STEADY_RATIO * low[k] || isMains(line, binHz, mains)) {
                continue;
            }
            double power = 0;
            for (int j = Math.max(1, k - 2); j <= Math.min(low.length - 1, k + 2); j++) {
                power += low[j];
            }
            tones.add(new Tone(line.frequencyHz(), Decibels.ofPower(power)));
        }
        tones.sort(Comparator.comparingDouble(Tone::levelDbfs).reversed());
        return tones.subList(0, Math.min(tones.size(), NoiseReading.MOST_TONES));
    }

    private static boolean isMains(SpectralLine line, double binHz, Optional<LockedMains> mains) {
        if (mains.isEmpty() || mains.get().levels().buzz() < line.power()) {
            return false;
        }
        double f = mains.get().frequencyHz();
        return Math.abs(line.frequencyHz() - f * Math.round(line.frequencyHz() / f)) < binHz;
    }
}
