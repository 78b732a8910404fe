package evenwood.eq;

import evenwood.measure.ThirdOctave;

/**
 * How much a third octave counts for how a tone sounds.
 *
 * <p>How: the part of a hearing channel that the band fills, at most 1. Below about 200 Hz a third octave is narrower than
 * what the ear takes as one, so several bands there are one sound and count together. Source: equivalent rectangular
 * bandwidth 24.7·(4.37·f/kHz + 1) Hz of Glasberg and Moore 1990 (from memory, not re-read). From 12.5 kHz half: strings
 * through a pickup have little there (our choice).
 */
final class EarWeight {
    private static final double HIGH_TREBLE_BEGINS_HZ = new ThirdOctave(11).lowerHz();
    private static final double HIGH_TREBLE_WEIGHT = 0.5;

    private EarWeight() { }

    static double of(ThirdOctave band) {
        double channelHz = 24.7 * (4.37 * band.centreHz() / 1000 + 1);
        double fills = Math.min(1, (band.upperHz() - band.lowerHz()) / channelHz);
        return band.lowerHz() >= HIGH_TREBLE_BEGINS_HZ ? HIGH_TREBLE_WEIGHT : fills;
    }
}
