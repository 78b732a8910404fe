package evenwood.judge;

import evenwood.measure.NoiseReading;
import evenwood.measure.TakeReadings;
import evenwood.measure.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Hum, buzz, hiss and foreign tones, as far under the playing as {@link Noticeability} says they are heard.
 *
 * <p>With no playing in the take the noise is held against playing as loud as the target window would have it.
 */
final class NoiseRule {
    /** The middle of the default window (−9 dBTP) under the usual 15 dB from peak to RMS of plucked strings; our choice. */
    private static final double IMAGINED_PLAYING_DBFS = -24;
    /** Nearer than this to a limit, measurement alone could have decided otherwise. */
    private static final double LEVEL_UNCERTAINTY_DB = 1;
    private static final double HUM_HIGHEST_HARMONIC = 5;
    private static final double BUZZ_HIGHEST_HZ = 2000;

    private final NoiseReading noise;
    private final double playingDbfs;
    private final boolean played;
    private final List<Finding> findings = new ArrayList<>();

    private NoiseRule(TakeReadings readings) {
        noise = readings.noise();
        played = readings.hasPlaying();
        playingDbfs = played ? readings.playingDbfs() : IMAGINED_PLAYING_DBFS;
    }

    static List<Finding> findings(TakeReadings readings) {
        NoiseRule rule = new NoiseRule(readings);
        rule.mains();
        rule.hiss();
        rule.tones();
        return rule.findings;
    }

    private void mains() {
        noise.mainsHz().ifPresent(mainsHz -> {
            add(Fault.HUM, Noticeability.HUM, noise.humDbfs(), mainsHz, new BandHz(mainsHz, HUM_HIGHEST_HARMONIC * mainsHz));
            add(Fault.BUZZ, Noticeability.BUZZ, noise.buzzDbfs(), mainsHz,
                new BandHz((HUM_HIGHEST_HARMONIC + 1) * mainsHz, BUZZ_HIGHEST_HZ));
        });
    }

    private void hiss() {
        add(Fault.HISS, Noticeability.HISS, noise.hissDbfs(), 0, null);
    }

    private void tones() {
        List<Tone> tones = noise.tones();
        if (!tones.isEmpty()) {
            Tone loudest = tones.stream().max(java.util.Comparator.comparingDouble(Tone::levelDbfs)).orElseThrow();
            add(Fault.TONE_INTERFERENCE, Noticeability.TONE, loudest.levelDbfs(), loudest.frequencyHz(),
                new BandHz(loudest.frequencyHz(), loudest.frequencyHz()));
        }
    }

    private void add(Fault fault, Noticeability limits, double levelDbfs, double frequencyHz, BandHz bandHz) {
        double under = playingDbfs - levelDbfs;
        Optional<Severity> severity = limits.severity(under);
        if (levelDbfs == Double.NEGATIVE_INFINITY || severity.isEmpty()) {
            return;
        }
        String key = fault.id() + (played ? ".evidence" : ".alone");
        findings.add(new Finding(fault, severity.get(), probability(limits.slightDb() - under),
            Statement.of(key, frequencyHz, levelDbfs, Math.abs(under), under < 0 ? 1 : 0), Optional.ofNullable(bandHz)));
    }

    /** That it is really past the limit of being noticed, from the measuring uncertainty alone. */
    private static double probability(double pastLimitDb) {
        double z = pastLimitDb / LEVEL_UNCERTAINTY_DB;
        return Math.min(0.99, 1 / (1 + Math.exp(-1.702 * z))); // logistic stand-in for the normal distribution, error < 0.01
    }
}
