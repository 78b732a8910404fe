package evenwood.sound;

import java.util.SplittableRandom;

/** A bad jack: clicks at random times, a jump that dies away within a millisecond. Figures invented for the demo. */
final class DemoClicks {
    private static final double FADE_SECONDS = 0.00035;
    private static final double LOUDEST = 0.09;
    private static final double RANGE_DB = 14;

    private final SplittableRandom random;
    private final int sampleRateHz;
    private final double perSecond;
    private final double fade;
    private double framesLeft;
    private double level;

    DemoClicks(int sampleRateHz, double perSecond, long seed) {
        this.sampleRateHz = sampleRateHz;
        this.perSecond = perSecond;
        random = new SplittableRandom(seed);
        fade = Math.exp(-1 / (FADE_SECONDS * sampleRateHz));
        framesLeft = wait(perSecond);
    }

    double next() {
        if (perSecond <= 0) {
            return 0;
        }
        level = level > 1e-9 || level < -1e-9 ? level * fade : 0;
        if (--framesLeft < 0) {
            level += LOUDEST * Decibels.toAmplitude(-RANGE_DB * random.nextDouble()) * (random.nextBoolean() ? 1 : -1);
            framesLeft = wait(perSecond);
        }
        return level;
    }

    private double wait(double clicksPerSecond) {
        return clicksPerSecond <= 0 ? Double.POSITIVE_INFINITY : -Math.log(1 - random.nextDouble()) / clicksPerSecond * sampleRateHz;
    }
}
