package evenwood.sound;

/**
 * One plucked string, as the wave that travels to and fro on it; what it gives is the force on the bridge.
 *
 * <p>In: {@link #tune}, {@link #pluck}, {@link #choke}. Out: a sample a frame, about ±the pluck's strength.
 * <p>How: a delay line as long as one period, closed through a one-pole low-pass that loses as much each round as the two
 * asked decay times want, and an all-pass that tunes the rest of the period exactly at the fundamental. A pluck lays the
 * bridge force of an ideally pulled string into the loop (a rectangle as wide as the pick's place on the string, so that
 * harmonics with a node there stay silent); its edges are as round as the pick is gentle. Two more all-passes make
 * high waves travel faster, as stiffness does, so that the partial near 3 kHz stands where n·f·√(1 + B·n²) puts it.
 * Source: Karplus and Strong, Computer Music Journal 7(2), 1983, from memory; Jaffe and Smith, the same, pp. 56–69
 * (pick position, decay, stiffness, and the all-pass coefficient sin((1−d)ω/2)/sin((1+d)ω/2), which was checked against a
 * public program citing them).
 * <p>Limits: one plane of vibration; pitch within 0.5 cent, decay within 10 % (PluckedStringTest); stiffness as far as
 * the sample rate leaves room for it.
 * <p>Thread: one owner. Nothing but the constructor allocates.
 */
final class PluckedString {
    /** Where the second decay time is given; under half of the lowest sample rate. */
    static final double BRIGHT_HZ = 3_000;
    private static final int HALVINGS = 24;
    /** Decades of amplitude in 60 dB. */
    private static final double SIXTY_DB = 3;
    private static final double HIGHEST_LOOP_GAIN = 0.99999;
    private static final double CHOKE_SECONDS = 0.0015;
    /** Below this an oscillation is silence: −400 dB, far above where floating point gets slow. */
    private static final double SILENT = 1e-20;

    private final int sampleRateHz;
    private final double[] line;
    private final double chokeStep;
    private int at;
    private int delayFrames;
    private double hz;
    private double periodFrames;
    private double loopGain;
    private double lossPole;
    private double lossState;
    private double allpass;
    private double allpassIn;
    private double allpassOut;
    private double stiffness;
    private double stiffIn;
    private double stiffMiddle;
    private double stiffOut;
    private double damping = 1;
    private double dampingGoal = 1;
    private double pluckFrame = Double.POSITIVE_INFINITY;
    private double pluckStrength;
    private double pickPosition;
    private double edgeFrames;
    private double arriving;

    PluckedString(int sampleRateHz, double lowestHz) {
        this.sampleRateHz = sampleRateHz;
        line = new double[(int) Math.ceil(sampleRateHz / lowestHz) + 4];
        chokeStep = 1 - Math.exp(-1 / (CHOKE_SECONDS * sampleRateHz));
    }

    /**
     * @param decaySeconds       time for the fundamental to lose 60 dB
     * @param brightDecaySeconds the same at 3 kHz, shorter
     * @param inharmonicity      B of f_n = n·f·√(1 + B·n²); 0 for an ideal string
     */
    void tune(double hz, double decaySeconds, double brightDecaySeconds, double inharmonicity) {
        this.hz = hz;
        double omega = omega(hz);
        lossPole = pole(omega, hz, decaySeconds, brightDecaySeconds);
        double loss = Math.sqrt(1 - 2 * lossPole * Math.cos(omega) + lossPole * lossPole) / (1 - lossPole);
        loopGain = Math.min(HIGHEST_LOOP_GAIN, roundGain(hz, decaySeconds) * loss);
        double lossDelay = Math.atan2(lossPole * Math.sin(omega), 1 - lossPole * Math.cos(omega)) / omega;
        periodFrames = sampleRateHz / hz;
        double left = periodFrames - lossDelay;
        stiffness = stiffness(hz, inharmonicity, left - 2);
        left -= 2 * allpassDelay(stiffness, omega);
        delayFrames = (int) Math.floor(left - 0.5);
        double fraction = left - delayFrames;
        allpass = Math.sin((1 - fraction) * omega / 2) / Math.sin((1 + fraction) * omega / 2);
    }

    private double omega(double frequencyHz) {
        return 2 * Math.PI * frequencyHz / sampleRateHz;
    }

    /** Phase delay in frames of (a + z⁻¹)/(1 + a·z⁻¹). */
    private static double allpassDelay(double a, double omega) {
        return 1 - 2 * Math.atan2(a * Math.sin(omega), 1 + a * Math.cos(omega)) / omega;
    }

    /** The all-pass that brings the partial near 3 kHz to its place, found by halving; no more delay than there is room. */
    private double stiffness(double hz, double inharmonicity, double roomFrames) {
        double partial = BRIGHT_HZ / hz;
        double early = periodFrames * (1 - 1 / Math.sqrt((1 + inharmonicity * partial * partial) / (1 + inharmonicity)));
        double strongest = -0.995;
        double weakest = 0;
        for (int i = 0; i < HALVINGS; i++) {
            double a = (strongest + weakest) / 2;
            double delay = 2 * allpassDelay(a, omega(hz));
            if (delay - 2 * allpassDelay(a, omega(BRIGHT_HZ)) > early || delay > roomFrames) {
                strongest = a;
            } else {
                weakest = a;
            }
        }
        return weakest;
    }

    /** The one-pole low-pass whose gains at the fundamental and at 3 kHz stand in the ratio of the two losses. */
    private double pole(double omega, double hz, double decaySeconds, double brightDecaySeconds) {
        double ratio = Math.pow(roundGain(hz, brightDecaySeconds) / roundGain(hz, decaySeconds), 2);
        if (ratio >= 1 || hz >= BRIGHT_HZ) {
            return 0;
        }
        double b = Math.cos(omega) - ratio * Math.cos(omega(BRIGHT_HZ));
        return (b - Math.sqrt(b * b - (1 - ratio) * (1 - ratio))) / (1 - ratio);
    }

    /** What is left after one period when 60 dB are lost in the given time. */
    private static double roundGain(double hz, double decaySeconds) {
        return Math.pow(10, -SIXTY_DB / (hz * decaySeconds));
    }

    /**
     * @param strength    height of the force, any unit
     * @param position    where the pick stands, as a share of the sounding length from the bridge
     * @param edgeSeconds how long the pick takes to let go: short is bright
     */
    void pluck(double strength, double position, double edgeSeconds) {
        pluckFrame = 0;
        pluckStrength = strength;
        pickPosition = position;
        edgeFrames = Math.max(1.3, edgeSeconds * sampleRateHz);
        dampingGoal = 1;
        damping = 1;
    }

    /** A hand or the pick rests on it: 60 dB in the given time, until the next pluck. */
    void choke(double decaySeconds) {
        dampingGoal = roundGain(hz, decaySeconds);
    }

    /** First half of a frame: the wave that now reaches the bridge. */
    double arrive() {
        double x = line[at >= delayFrames ? at - delayFrames : at - delayFrames + line.length];
        allpassOut = allpass * (x - allpassOut) + allpassIn;
        allpassIn = x;
        double middle = stiffness * (allpassOut - stiffMiddle) + stiffIn;
        stiffOut = stiffness * (middle - stiffOut) + stiffMiddle;
        stiffIn = allpassOut;
        stiffMiddle = middle;
        lossState = loopGain * (1 - lossPole) * stiffOut + lossPole * lossState;
        damping += chokeStep * (dampingGoal - damping);
        arriving = damping * lossState;
        return arriving;
    }

    /** Second half: the bridge gave way a little and keeps that much; returns the force on it. */
    double leave(double keptByBridge) {
        double out = audible(arriving - keptByBridge + excitation());
        line[at] = out;
        at = at + 1 == line.length ? 0 : at + 1;
        return out;
    }

    private double excitation() {
        if (pluckFrame > periodFrames + edgeFrames) {
            return 0;
        }
        double force = (1 - pickPosition) * edge(pluckFrame) - edge(pluckFrame - pickPosition * periodFrames)
            + pickPosition * edge(pluckFrame - periodFrames);
        pluckFrame++;
        return pluckStrength * force;
    }

    /** A step from 0 to 1 along half a cosine. */
    private double edge(double frame) {
        return frame <= 0 ? 0 : frame >= edgeFrames ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * frame / edgeFrames);
    }

    /** Clears what has died away, so that nothing computes with numbers too small to matter. [now and then] */
    void settle() {
        lossState = audible(lossState);
        allpassOut = audible(allpassOut);
        stiffMiddle = audible(stiffMiddle);
        stiffOut = audible(stiffOut);
    }

    private static double audible(double x) {
        return Math.abs(x) < SILENT ? 0 : x;
    }
}
