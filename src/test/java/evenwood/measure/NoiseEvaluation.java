package evenwood.measure;

import evenwood.evaluate.Evaluation;
import evenwood.takes.Faults;
import evenwood.takes.Mains;
import evenwood.takes.PackagedTakes;
import evenwood.takes.Take;
import evenwood.takes.Tones;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Mains, hum, buzz and tones on takes of real instruments, with rests and without, against what was put in. Asked: nothing claimed of clean
 * takes; mains found, within 0.02 Hz and hum within 1 dB. Tones are shown, not asked for.
 */
public final class NoiseEvaluation implements Evaluation {
    private static final int RATE_HZ = 48_000;
    private static final double[] LEVELS_DBFS = {-40, -50, -60, -70};

    private static final double MOST_MAINS_ERROR_MHZ = 20;
    private static final double MOST_HUM_ERROR_DB = 1;
    /** By so much mains wander in normal operation; noise under −60 dBFS is not noticed through playing that never stops (our choice). */
    private static final double NORMAL_DRIFT_HZ = 0.02;
    private static final double NOTICED_DBFS = -60;

    private final List<String> missed = new ArrayList<>();

    private record Case(float[] clean, String name, int number) { }

    @Override
    public void run(PrintStream out) {
        List<Case> rests = new ArrayList<>();
        List<Case> noRests = new ArrayList<>();
        int number = 0;
        for (Take take : PackagedTakes.oneEach()) {
            number++;
            if (number % Integer.getInteger("noise.every", 1) != 0) {
                continue;
            }
            float[] samples = PackagedTakes.samples(take.withRoom(number % 2 == 0 ? -85 : -75, number));
            rests.add(new Case(samples, take.instrument().id(), number));
            noRests.add(new Case(NoiseListening.withoutRests(samples, RATE_HZ), take.instrument().id(), number));
        }
        clean(out, "with rests", rests);
        clean(out, "without a rest", noRests);
        out.println("| playing | mains noise | drift | takes | found | frequency error, median / 90 % / worst, mHz | hum error, median / 90 % / worst, dB | buzz error, 90 %, dB |");
        out.println("|---|---|---|---|---|---|---|---|");
        for (double driftHz : new double[] {0, 0.02, 0.05}) {
            for (double levelDbfs : LEVELS_DBFS) {
                mains(out, "with rests", rests, levelDbfs, driftHz);
            }
        }
        for (double levelDbfs : LEVELS_DBFS) {
            mains(out, "without a rest", noRests, levelDbfs, 0.02);
        }
        out.println();
        out.println("| tone | level | playing | takes | found | frequency error, worst, % | level error, 90 % / worst, dB | others called tones |");
        out.println("|---|---|---|---|---|---|---|---|");
        for (Tones.Kind kind : Tones.Kind.values()) {
            for (double levelDbfs : new double[] {-60, -75}) {
                tone(out, "with rests", rests, kind, levelDbfs);
            }
            tone(out, "without a rest", noRests, kind, -60);
        }
        if (!missed.isEmpty()) {
            throw new AssertionError("noise: " + String.join("; ", missed));
        }
    }

    private void clean(PrintStream out, String playing, List<Case> cases) {
        int mains = 0;
        int tones = 0;
        List<String> alarms = new ArrayList<>();
        for (Case c : cases) {
            NoiseReading noise = NoiseListening.to(c.clean, RATE_HZ).noise();
            mains += noise.hasMains() ? 1 : 0;
            tones += noise.tones().size();
            if (noise.hasMains() || !noise.tones().isEmpty()) {
                alarms.add(String.format(Locale.ROOT, "- %s: mains %s hum %.1f dBFS, tones %s", c.name, noise.mainsHz(), noise.humDbfs(), noise.tones()));
            }
        }
        out.printf(Locale.ROOT, "Clean takes %s: %d; mains claimed in %d, tones claimed %d.%n%n", playing, cases.size(), mains, tones);
        alarms.forEach(out::println);
        if (mains + tones > 0) {
            missed.add("clean takes " + playing + ": " + mains + " with mains, " + tones + " tones");
        }
    }

    private void mains(PrintStream out, String playing, List<Case> cases, double levelDbfs, double driftHz) {
        List<Double> hz = new ArrayList<>();
        List<Double> hum = new ArrayList<>();
        List<Double> buzz = new ArrayList<>();
        List<String> bad = new ArrayList<>();
        int found = 0;
        for (Case c : cases) {
            double mainsHz = (c.number % 2 == 0 ? 50 : 60) + 0.4 * Math.sin(c.number * 2.3);
            Mains.Origin origin = Mains.Origin.values()[(c.number + (int) levelDbfs / 10 + 10) % Mains.Origin.values().length];
            var injected = Faults.mains(c.clean, RATE_HZ, origin, mainsHz, driftHz, levelDbfs, c.number);
            NoiseReading noise = NoiseListening.to(injected.samples(), RATE_HZ).noise();
            if (noise.hasMains()) {
                found++;
                hz.add(1000 * Math.abs(noise.mainsHz().getAsDouble() - injected.truth().mainsHz()));
                if (injected.truth().humDbfs() > levelDbfs - 12) {
                    hum.add(Math.abs(noise.humDbfs() - injected.truth().humDbfs()));
                }
                if (injected.truth().buzzDbfs() > levelDbfs - 12) {
                    buzz.add(Math.abs(noise.buzzDbfs() - injected.truth().buzzDbfs()));
                }
            }
            boolean wrong = !noise.hasMains() || hz.get(hz.size() - 1) > 20
                || injected.truth().humDbfs() > levelDbfs - 12 && Math.abs(noise.humDbfs() - injected.truth().humDbfs()) > 1;
            if (wrong) {
                bad.add(String.format(Locale.ROOT, "%s %s %s true %.3f Hz %.1f dBFS: %s ±%.4f %.1f", c.name, origin, noise.method(), injected.truth().mainsHz(),
                    injected.truth().humDbfs(), noise.mainsHz(), noise.mainsUncertaintyHz(), noise.humDbfs()));
            }
        }
        out.printf(Locale.ROOT, "| %s | %.0f dBFS | ±%.0f mHz | %d | %d | %.1f / %.1f / %.1f | %.2f / %.2f / %.2f | %.2f |%n", playing, levelDbfs, 1000 * driftHz,
            cases.size(), found, share(hz, 0.5), share(hz, 0.9), share(hz, 1), share(hum, 0.5), share(hum, 0.9), share(hum, 1), share(buzz, 0.9));
        boolean asked = driftHz <= NORMAL_DRIFT_HZ && (!playing.startsWith("without") || levelDbfs >= NOTICED_DBFS);
        if (asked && (found < cases.size() || share(hz, 1) > MOST_MAINS_ERROR_MHZ || share(hum, 1) > MOST_HUM_ERROR_DB)) {
            missed.add(String.format(Locale.ROOT, "mains %s at %.0f dBFS, ±%.0f mHz", playing, levelDbfs, 1000 * driftHz));
        }
        if (Boolean.getBoolean("noise.details")) {
            bad.forEach(line -> out.println("    " + line));
        }
    }

    private static void tone(PrintStream out, String playing, List<Case> cases, Tones.Kind kind, double levelDbfs) {
        int found = 0;
        int others = 0;
        double worstPercent = 0;
        List<Double> level = new ArrayList<>();
        for (Case c : cases) {
            var injected = Faults.tone(c.clean, RATE_HZ, kind, levelDbfs, c.number);
            NoiseReading noise = NoiseListening.to(injected.samples(), RATE_HZ).noise();
            boolean here = false;
            if (Boolean.getBoolean("noise.details") && kind == Tones.Kind.SWITCH_MODE) {
                out.println("    " + c.name + " " + noise.method() + " true " + injected.truth() + " " + noise.tones());
            }
            for (Tone tone : noise.tones()) {
                double percent = 100 * Math.abs(tone.frequencyHz() / injected.truth().frequencyHz() - 1);
                if (percent < 3 && !here) {
                    here = true;
                    worstPercent = Math.max(worstPercent, percent);
                    level.add(Math.abs(tone.levelDbfs() - injected.truth().levelDbfs()));
                } else if (Math.abs(tone.frequencyHz() % injected.truth().frequencyHz()) > 5) {
                    others++;
                }
            }
            found += here ? 1 : 0;
        }
        out.printf(Locale.ROOT, "| %s | %.0f dBFS | %s | %d | %d | %.2f | %.2f / %.2f | %d |%n", kind.name().toLowerCase(Locale.ROOT).replace('_', ' '), levelDbfs, playing,
            cases.size(), found, worstPercent, share(level, 0.9), share(level, 1), others);
    }

    private static double share(List<Double> values, double share) {
        if (values.isEmpty()) {
            return 0;
        }
        List<Double> sorted = values.stream().sorted().toList();
        return sorted.get((int) Math.min(sorted.size() - 1, Math.floor(share * sorted.size())));
    }
}
