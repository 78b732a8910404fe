package evenwood.takes;

import java.util.SplittableRandom;

/**
 * Whistles that are neither music nor mains.
 *
 * <p>USB's 1 kHz frames and 8 kHz microframes and the 217 Hz frames of a phone (4.615 ms, a slot being an eighth of it):
 * the project's reference §8.3. 15.625 kHz is the line frequency of a 625-line screen. Switch-mode whine wanders with
 * load: a slow random walk, here within some per cent of 11.3 kHz (common practice).
 */
public final class Tones {
    private static final double PHONE_FRAME_SECONDS = 0.004_615;
    private static final int PHONE_SLOTS = 8;
    private static final int PHONE_MULTIFRAME = 26;
    private static final double PHONE_BURST_SECONDS = 1.5;

    /** Where it comes from, its frequency and how strong its second and third harmonics are. */
    public enum Kind {
        USB_FRAMES(1000, 0.3, 0.15), USB_MICROFRAMES(8000, 0.25, 0), SCREEN_LINES(15_625, 0, 0), SWITCH_MODE(11_300, 0, 0);

        private final double hz;
        private final double second;
        private final double third;

        Kind(double hz, double second, double third) {
            this.hz = hz;
            this.second = second;
            this.third = third;
        }
    }

    /**
     * @param frequencyHz mean frequency of the fundamental
     * @param levelDbfs   RMS of the fundamental while it sounds
     * @param totalDbfs   RMS with its harmonics over the whole take
     */
    public record Truth(double frequencyHz, double levelDbfs, double totalDbfs) { }

    private Tones() { }

    static Injected<Truth> add(float[] clean, int sampleRateHz, Kind kind, double levelDbfs, long seed) {
        if (kind.hz > 0.45 * sampleRateHz) {
            throw new IllegalArgumentException("tone: " + kind.hz + " Hz does not fit under half of " + sampleRateHz + " Hz");
        }
        SplittableRandom random = new SplittableRandom(seed);
        double start = random.nextDouble();
        double amplitude = Math.sqrt(2) * Math.pow(10, levelDbfs / 20);
        double[] strength = {1, 2.1 * kind.hz < sampleRateHz / 2.0 ? kind.second : 0, 3.1 * kind.hz < sampleRateHz / 2.0 ? kind.third : 0};
        float[] out = clean.clone();
        double cycle = start;
        double wander = 0;
        double drive = 0;
        double sumHz = 0;
        double power = 0;
        for (int i = 0; i < out.length; i++) {
            if (kind == Kind.SWITCH_MODE) {
                drive += 2 * Math.PI * 0.5 / sampleRateHz * (random.nextGaussian() * Math.sqrt(sampleRateHz) - drive);
                wander += 2 * Math.PI * 0.5 / sampleRateHz * (drive - wander);
            }
            double hz = kind.hz * (1 + 0.03 * Math.tanh(wander));
            sumHz += hz;
            cycle += hz / sampleRateHz;
            cycle -= Math.floor(cycle);
            double x = 0;
            for (int k = 0; k < strength.length; k++) {
                x += strength[k] * Math.sin(2 * Math.PI * (k + 1) * cycle);
            }
            out[i] += (float) (amplitude * x);
            power += amplitude * amplitude * x * x;
        }
        return new Injected<>(out, new Truth(sumHz / out.length, levelDbfs, 10 * Math.log10(power / out.length)));
    }

    /** Bursts of a phone: rectified radio slots, 217 a second with every 26th left out, on for 1.5 s of every 4 s. */
    static Injected<Truth> phone(float[] clean, int sampleRateHz, double peakDbfs, long seed) {
        double offsetSeconds = new SplittableRandom(seed).nextDouble() * PHONE_BURST_SECONDS;
        float[] out = clean.clone();
        double peak = Math.pow(10, peakDbfs / 20);
        double coupled = 0;
        double before = 0;
        double k = Math.exp(-2 * Math.PI * 80 / sampleRateHz);
        double power = 0;
        double real = 0;
        double imaginary = 0;
        long sounding = 0;
        for (int i = 0; i < out.length; i++) {
            double t = i / (double) sampleRateHz + offsetSeconds;
            boolean on = t % 4 < PHONE_BURST_SECONDS;
            long frame = (long) (t / PHONE_FRAME_SECONDS);
            boolean slot = t / PHONE_FRAME_SECONDS - frame < 1.0 / PHONE_SLOTS && frame % PHONE_MULTIFRAME != 0;
            double x = on && slot ? peak : 0;
            coupled = k * (coupled + x - before);
            before = x;
            out[i] += (float) coupled;
            power += coupled * coupled;
            if (on) {
                sounding++;
                real += coupled * Math.cos(2 * Math.PI * t / PHONE_FRAME_SECONDS);
                imaginary += coupled * Math.sin(2 * Math.PI * t / PHONE_FRAME_SECONDS);
            }
        }
        double fundamental = Math.sqrt(2) * Math.hypot(real, imaginary) / Math.max(1, sounding);
        return new Injected<>(out, new Truth(1 / PHONE_FRAME_SECONDS, 20 * Math.log10(fundamental), 10 * Math.log10(power / out.length)));
    }
}
