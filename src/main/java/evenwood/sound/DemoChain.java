package evenwood.sound;

import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * From the demo's pickup to the converter, with the scenario's faults on the way, in this order: the body's boom, mains
 * and phone and crackle picked up by the cable, the preamp's noise and ceiling, coupling, gain, converter.
 *
 * <p>Levels in dBFS are at the converter with the usual gain. Noise of {@value #FLOOR_DBFS} dBFS is always there, as in
 * every chain.
 * <p>Limits: the preamp bends samples, not a voltage, so its highest products fold back.
 * <p>Thread: one owner. {@link #next} never allocates.
 */
final class DemoChain {
    /** Where the hardest strum peaks in the clean scenario, within a decibel or so by seed and rate. */
    static final double HARDEST_DBFS = -9;
    static final double FLOOR_DBFS = -84;
    private static final double BOOM_HZ = 152;
    private static final double BOOM_Q = 1.1;
    private static final double COUPLING_HZ = 8;
    /** How abruptly the preamp's ceiling comes: 8 bends over the last 2 dB. */
    private static final double KNEE = 8;

    private final Resonance boom;
    private final FridgeMains mains;
    private final DemoClicks crackle;
    private final PhoneBursts phone;
    private final SplittableRandom random;
    private final double noise;
    private final double ceiling;
    private final double leak;
    private final double gain;
    private double before;
    private double coupled;

    DemoChain(int sampleRateHz, long seed, DemoScenario scenario) {
        OptionalDouble boomDb = scenario.amount(DemoFault.BOOM);
        boom = boomDb.isPresent() ? Resonance.bump(sampleRateHz, BOOM_HZ, BOOM_Q, boomDb.getAsDouble()) : null;
        mains = new FridgeMains(sampleRateHz, level(scenario, DemoFault.FRIDGE_HUM), level(scenario, DemoFault.FRIDGE_BUZZ), seed + 1);
        crackle = new DemoClicks(sampleRateHz, scenario.amount(DemoFault.CRACKLE).orElse(0), seed + 2);
        phone = new PhoneBursts(sampleRateHz, level(scenario, DemoFault.PHONE));
        random = new SplittableRandom(seed + 3);
        noise = Math.hypot(Decibels.toAmplitude(FLOOR_DBFS), level(scenario, DemoFault.HISS));
        OptionalDouble over = scenario.amount(DemoFault.PREAMP_OVERDRIVE);
        ceiling = over.isPresent() ? Decibels.toAmplitude(HARDEST_DBFS - over.getAsDouble()) : Double.POSITIVE_INFINITY;
        leak = Math.exp(-2 * Math.PI * COUPLING_HZ / sampleRateHz);
        gain = Decibels.toAmplitude(scenario.amount(DemoFault.TOO_HOT).orElse(0) - scenario.amount(DemoFault.TOO_QUIET).orElse(0));
    }

    /** The fault's level as an amplitude; 0 when it is not there. */
    private static double level(DemoScenario scenario, DemoFault fault) {
        OptionalDouble dbfs = scenario.amount(fault);
        return dbfs.isPresent() ? Decibels.toAmplitude(dbfs.getAsDouble()) : 0;
    }

    /** One frame from the pickup, scaled so that the hardest strum peaks at {@link #HARDEST_DBFS}; out as the converter gives it. */
    float next(double pickup) {
        double x = boom == null ? pickup : boom.next(pickup);
        x += mains.next() + crackle.next() + phone.next() + noise * random.nextGaussian();
        double limited = ceiling == Double.POSITIVE_INFINITY ? x : x / Math.pow(1 + Math.pow(Math.abs(x) / ceiling, KNEE), 1 / KNEE);
        coupled = leak * (coupled + limited - before);
        before = limited;
        return (float) Math.max(-1, Math.min(1, gain * coupled));
    }

    void settle() {
        if (boom != null) {
            boom.settle();
        }
    }
}
