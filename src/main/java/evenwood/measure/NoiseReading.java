package evenwood.measure;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What is heard when nobody plays. All levels are plain RMS, dBFS; −Infinity where there is nothing.
 *
 * @param floorDbfs         everything from 20 Hz to 20 kHz (or half the sample rate) in the quiet parts
 * @param floorDbfsA        the same, A-weighted
 * @param mainsHz           the mains frequency; empty when no mains was found or 50 and 60 Hz could not be told apart
 * @param mainsUncertaintyHz standard error of it; 0 when empty
 * @param humDbfs           mains harmonics 1 to 5 together; −Infinity when no mains was found
 * @param buzzDbfs          mains harmonics from 6 up to 2 kHz at least, together; −Infinity when none stands out
 * @param hissDbfs          the floor without hum, buzz, tones and clicks
 * @param tones             steady lines that are no mains harmonic, strongest first, at most {@link #MOST_TONES}
 * @param quietSecondsUsed  how much quiet the reading rests on
 * @param method            how it was found
 */
public record NoiseReading(double floorDbfs, double floorDbfsA, OptionalDouble mainsHz, double mainsUncertaintyHz,
                           double humDbfs, double buzzDbfs, double hissDbfs, List<Tone> tones,
                           double quietSecondsUsed, Method method) {
    public static final int MOST_TONES = 8;

    /** How the noise was told from the playing. */
    public enum Method {
        /** Nothing was heard yet. */
        NONE,
        /** From the parts where nobody played. */
        QUIET_PARTS,
        /** Nobody stopped playing: from what is always there; levels of floor and hiss are upper bounds. */
        MINIMA
    }

    public static final NoiseReading NOTHING = new NoiseReading(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY,
        OptionalDouble.empty(), 0, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, List.of(),
        0, Method.NONE);

    public NoiseReading {
        if (Double.isNaN(floorDbfs) || Double.isNaN(floorDbfsA) || Double.isNaN(humDbfs) || Double.isNaN(buzzDbfs)
            || Double.isNaN(hissDbfs) || Double.isNaN(mainsUncertaintyHz) || Double.isNaN(mainsHz.orElse(0))) {
            throw new IllegalArgumentException("noise reading: floorDbfs=" + floorDbfs + ", floorDbfsA=" + floorDbfsA
                + ", mainsHz=" + mainsHz + ", humDbfs=" + humDbfs + ", buzzDbfs=" + buzzDbfs + ", hissDbfs=" + hissDbfs
                + ", but all must be numbers (−Infinity for silence)");
        }
        tones = List.copyOf(tones);
    }

    /** Whether the mains was found. */
    public boolean hasMains() {
        return mainsHz.isPresent();
    }
}
