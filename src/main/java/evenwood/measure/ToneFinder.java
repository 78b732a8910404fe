package evenwood.measure;

import evenwood.sound.Decibels;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Picks the lines that are tones: no mains harmonic, and no skirt of one.
 *
 * <p>How: below the end of the low spectrum a line is the mains's when it joined the {@link MainsFit}; above, where
 * harmonics are hardly told apart, when it stands on a harmonic's place and its neighbours in the family are as strong.
 */
final class ToneFinder {
    private final LineSpectrum low;
    private final LineSpectrum high;
    private final Optional<MainsFit> mains;

    ToneFinder(LineSpectrum low, LineSpectrum high, Optional<MainsFit> mains) {
        this.low = low;
        this.high = high;
        this.mains = mains;
    }

    /** Strongest first. */
    List<Tone> find(List<SpectralLine> lowLines, List<SpectralLine> highLines) {
        List<Tone> tones = new ArrayList<>();
        for (SpectralLine line : lowLines) {
            if (mains.isEmpty() || mains.get().isStranger(line, low)) {
                addTone(tones, low, line);
            }
        }
        for (SpectralLine line : highLines) {
            if (line.frequencyHz() > low.topHz() && !isOfComb(line)) {
                addTone(tones, high, line);
            }
        }
        tones.sort(Comparator.comparingDouble(Tone::levelDbfs).reversed());
        return tones.subList(0, Math.min(tones.size(), NoiseReading.MOST_TONES));
    }

    private static void addTone(List<Tone> tones, LineSpectrum spectrum, SpectralLine line) {
        double power = spectrum.excessPower(line.frequencyHz(), spectrum.shape().lobeHz());
        if (power > 0) {
            tones.add(new Tone(line.frequencyHz(), Decibels.ofPower(power)));
        }
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
