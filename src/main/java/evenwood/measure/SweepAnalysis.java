package evenwood.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Hears a recording of {@link SineSweeps} that went through a box.
 *
 * <p>In: the whole recording, however late it began or early it stopped, at any sample rate from 8 kHz. Out: {@link SweepReading};
 * empty when no sweep is in it.
 * <p>How: {@link SweepEchoes} gives one answer a sweep; the loudest clean one is the response, since there the noise is
 * furthest down; harmonics are read from the answers ahead of it (Farina 2000), less the noise of an equal stretch of silence.
 * <p>Limits: within 0.1 dB from 25 Hz to 18 kHz of filters and circuits of known response (SweepAnalysisReferenceTest). A
 * recorder whose clock is off by 100 millionths does no harm.
 * <p>Thread: any; takes some hundred megabytes at 192 kHz for as long as it lasts.
 */
public final class SweepAnalysis {
    /** One per cent of harmonics: common practice for where a stage begins to overload. */
    private static final double OVERLOADED = 0.01;
    private static final double CLEAN = 0.005;
    private static final double BEFORE_SECONDS = 0.12;
    private static final double AFTER_SECONDS = 0.5;
    private static final double HARMONIC_BEFORE_SECONDS = 0.03;
    private static final double HARMONIC_AFTER_SECONDS = 0.1;
    private static final double SILENCE_AFTER_SECONDS = 1.5;
    private static final double WITHIN_SECONDS = 0.01;
    private static final int HIGHEST_HARMONIC = 5;
    /** An answer stands at least so far out of the noise between the answers. */
    private static final double STANDS_OUT = 4;
    private static final double RISES_FROM_NOISE = 4;
    private static final double FULL_SCALE = 0.985;
    /** From systematic errors that noise does not show (SweepAnalysisReferenceTest). */
    private static final double LEAST_DEVIATION_DB = 0.03;
    private static final List<ThirdOctave> DISTORTION_BANDS = ThirdOctave.range(100, 4000);

    private final float[] recording;
    private final SweepEchoes echoes;
    private final int sampleRateHz;
    /** When the sweep that would be the first began, even if the recording began later. */
    private final double originSeconds;

    private SweepAnalysis(float[] recording, int sampleRateHz) {
        this.recording = recording;
        this.sampleRateHz = sampleRateHz;
        echoes = new SweepEchoes(recording, sampleRateHz);
        originSeconds = origin(echoes);
    }

    public static Optional<SweepReading> of(float[] recording, int sampleRateHz) {
        if (recording.length < SineSweeps.SECONDS * sampleRateHz) {
            return Optional.empty();
        }
        return new SweepAnalysis(recording, sampleRateHz).reading();
    }

    /** The highest answer may be any sweep's; the pauses tell which. */
    private static double origin(SweepEchoes echoes) {
        double highest = echoes.highestSeconds();
        double best = Double.NEGATIVE_INFINITY;
        double origin = 0;
        for (int guess = 0; guess < SineSweeps.COUNT; guess++) {
            double start = highest - SineSweeps.startSeconds(guess);
            double score = 0;
            for (int sweep = 0; sweep < SineSweeps.COUNT; sweep++) {
                score += Math.log(1e-9 + echoes.peak(start + SineSweeps.startSeconds(sweep), WITHIN_SECONDS));
            }
            if (score > best) {
                best = score;
                origin = start;
            }
        }
        return origin;
    }

    private Optional<SweepReading> reading() {
        List<Integer> heard = new ArrayList<>();
        for (int sweep = 0; sweep < SineSweeps.COUNT; sweep++) {
            if (isWhole(sweep) && echoes.peak(at(sweep), WITHIN_SECONDS) > STANDS_OUT * echoes.peak(at(sweep) + SILENCE_AFTER_SECONDS, AFTER_SECONDS)) {
                heard.add(sweep);
            }
        }
        if (heard.isEmpty()) {
            return Optional.empty();
        }
        List<SweepReading.Level> levels = heard.stream().map(this::level).toList();
        int cleanest = 0;
        for (int i = 0; i < levels.size(); i++) {
            cleanest = levels.get(i).distortion() < CLEAN && !levels.get(i).isRecordingFull() ? i : cleanest;
        }
        return Optional.of(withOverload(points(heard.get(cleanest)), levels));
    }

    private double at(int sweep) {
        return originSeconds + SineSweeps.startSeconds(sweep);
    }

    private boolean isWhole(int sweep) {
        return at(sweep) >= 0 && (at(sweep) + SineSweeps.SECONDS) * sampleRateHz <= recording.length;
    }

    private List<SweepReading.Point> points(int sweep) {
        PowerAtFrequency tone = echoes.power(at(sweep), BEFORE_SECONDS, AFTER_SECONDS);
        PowerAtFrequency noise = echoes.power(at(sweep) + SILENCE_AFTER_SECONDS, BEFORE_SECONDS, AFTER_SECONDS);
        return Arrays.stream(SweepReading.frequenciesHz(sampleRateHz)).mapToObj(hz -> {
            double power = Math.max(1e-20, tone.at(hz));
            double relative = Math.min(1, Math.sqrt(noise.at(hz) / (2 * power)));
            return new SweepReading.Point(hz, 10 * Math.log10(power) - SineSweeps.levelDbfs(sweep),
                Math.hypot(LEAST_DEVIATION_DB, 20 / Math.log(10) * relative));
        }).toList();
    }

    private SweepReading.Level level(int sweep) {
        int from = (int) Math.max(0, Math.round(at(sweep) * sampleRateHz));
        int to = (int) Math.min(recording.length, Math.round((at(sweep) + SineSweeps.SECONDS + WITHIN_SECONDS) * sampleRateHz));
        double peak = 0;
        for (int i = from; i < to; i++) {
            peak = Math.max(peak, Math.abs(recording[i]));
        }
        return new SweepReading.Level(SineSweeps.levelDbfs(sweep), 20 * Math.log10(peak), distortion(sweep), peak >= FULL_SCALE);
    }

    private double distortion(int sweep) {
        PowerAtFrequency tone = echoes.power(at(sweep), BEFORE_SECONDS, AFTER_SECONDS);
        PowerAtFrequency noise = echoes.power(at(sweep) + SILENCE_AFTER_SECONDS, HARMONIC_BEFORE_SECONDS, HARMONIC_AFTER_SECONDS);
        double[] harmonics = new double[DISTORTION_BANDS.size()];
        for (int harmonic = 2; harmonic <= HIGHEST_HARMONIC; harmonic++) {
            PowerAtFrequency answer = echoes.power(at(sweep) - SineSweeps.leadSeconds(harmonic), HARMONIC_BEFORE_SECONDS, HARMONIC_AFTER_SECONDS);
            for (int i = 0; i < harmonics.length; i++) {
                double hz = harmonic * DISTORTION_BANDS.get(i).centreHz();
                boolean held = hz < SineSweeps.HIGHEST_SHARE * sampleRateHz && hz < SineSweeps.HIGHEST_HZ;
                double power = held ? answer.at(hz) : 0;
                harmonics[i] += held && power > RISES_FROM_NOISE * noise.at(hz) ? power - noise.at(hz) : 0;
            }
        }
        double worst = 0;
        for (int i = 0; i < harmonics.length; i++) {
            worst = Math.max(worst, harmonics[i] / Math.max(1e-30, tone.at(DISTORTION_BANDS.get(i).centreHz())));
        }
        return Math.sqrt(worst);
    }

    /** Straight between two levels, over the logarithm of the distortion. */
    private static SweepReading withOverload(List<SweepReading.Point> points, List<SweepReading.Level> levels) {
        for (int i = 0; i < levels.size() && !levels.get(i).isRecordingFull(); i++) {
            SweepReading.Level level = levels.get(i);
            if (level.distortion() >= OVERLOADED) {
                SweepReading.Level under = levels.get(Math.max(0, i - 1));
                double least = Math.max(under.distortion(), OVERLOADED / 100);
                double part = i == 0 ? 1 : Math.log(OVERLOADED / least) / Math.log(level.distortion() / least);
                return new SweepReading(points, levels, OptionalDouble.of(under.sentDbfs() + part * (level.sentDbfs() - under.sentDbfs())),
                    OptionalDouble.of(under.heardPeakDbfs() + part * (level.heardPeakDbfs() - under.heardPeakDbfs())));
            }
        }
        return new SweepReading(points, levels, OptionalDouble.empty(), OptionalDouble.empty());
    }
}
