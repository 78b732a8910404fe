package evenwood.evaluate;

import evenwood.eq.EqChain;
import evenwood.eq.Solution;
import evenwood.eq.Solver;
import evenwood.judge.Fault;
import evenwood.judge.Finding;
import evenwood.judge.Severity;
import evenwood.judge.ToneComparison;
import evenwood.judge.ToneRule;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import evenwood.takes.KeptTone;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/**
 * One take as the target of another on the same source, another song in another key: clean takes must not be blamed, faults
 * put into the sound must be named, and the moves must undo an equaliser.
 *
 * <p>What an equaliser does to the readings is worked out ({@link EqualisedTone}), not heard anew.
 */
public final class LikeEvaluation implements Evaluation {
    private static final int[][] PAIRS = {{0, 1}, {0, 2}, {1, 2}, {1, 0}, {2, 0}, {2, 1}};
    private static final double[] AMOUNTS_DB = {6, 9};
    private static final int[][] FAULTY_PAIRS = {{2, 0}, {0, 1}};
    private static final double MOST_ALARMS = 0.02;
    private static final double[] LEAST_NAMED = {0.85, 0.95};
    private static final double MOST_LEFT_DB = 1.5;
    private static final List<ThirdOctave> JUDGED = ThirdOctave.range(80, 10_000);

    /** What came of one kind of trial. */
    private static final class Tally {
        private int trials;
        private final Map<Fault, Integer> named = new TreeMap<>();
        private final Map<Fault, Integer> plain = new TreeMap<>();
    }

    private final Map<String, Tally> tallies = new TreeMap<>();
    private final Map<String, List<Double>> figures = new TreeMap<>();

    @Override
    public void run(PrintStream out) {
        SplittableRandom random = new SplittableRandom(12);
        for (LikeSources.Source source : LikeSources.all()) {
            List<TakeReadings> heard = source.songs().stream().map(KeptTone::readings).toList();
            for (int[] pair : PAIRS) {
                clean(source, heard.get(pair[0]), heard.get(pair[1]));
            }
            for (int[] pair : source.tuning() ? new int[0][] : FAULTY_PAIRS) {
                faults(source, heard.get(pair[0]), heard.get(pair[1]), random);
                undo(source, heard.get(pair[0]), heard.get(pair[1]), random);
            }
        }
        print(out);
        holdWhatIsPromised();
    }

    private void faults(LikeSources.Source source, TakeReadings song, TakeReadings wanted, SplittableRandom random) {
        for (double amountDb : AMOUNTS_DB) {
            for (Fault fault : LikeFault.ALL) {
                EqChain chain = LikeFault.chain(fault, amountDb, source.lowestHz(), random);
                String name = name(source, fault.id() + " by " + Math.round(amountDb) + " dB");
                tally(name, EqualisedTone.of(song, chain), wanted, LikeFault.words(fault, chain, source.lowestHz()));
            }
        }
    }

    private void clean(LikeSources.Source source, TakeReadings heard, TakeReadings wanted) {
        ToneComparison comparison = tally(name(source, "clean"), heard, wanted, List.of());
        List<ToneDifference.Band> bands = comparison.difference().bands();
        figure(source, "clean, RMS of difference", rms(bands, band -> band.differenceDb()));
        figure(source, "clean, known bands of " + JUDGED.size(), bands.stream().filter(band -> JUDGED.contains(band.band())).count());
        figure(source, "clean, share of bands beyond their uncertainty",
            bands.stream().filter(band -> Math.abs(band.differenceDb()) > band.uncertaintyDb()).count() / Math.max(1.0, bands.size()));
        figure(source, "clean, RMS of plain average spectra", rms(bands, band -> level(heard, band.band()) - level(wanted, band.band())));
    }

    private void undo(LikeSources.Source source, TakeReadings song, TakeReadings wanted, SplittableRandom random) {
        EqChain chain = LikeFault.equaliser(random);
        ToneDifference difference = ToneComparison.withTake(EqualisedTone.of(song, chain), wanted).difference();
        List<ToneDifference.Band> bands = difference.bands();
        figure(source, "equaliser, RMS put in", rms(bands, band -> response(chain, band.band())));
        figure(source, "equaliser, RMS of error of difference", rms(bands, band -> band.differenceDb() - response(chain, band.band())));
        if (bands.isEmpty()) {
            return;
        }
        Solution solution = new Solver(LikeSources.RATE_HZ).solve(difference, Solver.MOST_TURNS);
        figure(source, "equaliser, RMS left after moves", rms(bands, band -> response(chain, band.band()) + response(solution.change(), band.band())));
    }

    /** @param rightWords findings that count as the first of them */
    private ToneComparison tally(String name, TakeReadings heard, TakeReadings wanted, List<Fault> rightWords) {
        ToneComparison comparison = ToneComparison.withTake(heard, wanted);
        Tally tally = tallies.computeIfAbsent(name, key -> new Tally());
        tally.trials++;
        Set<Fault> named = EnumSet.noneOf(Fault.class);
        Set<Fault> plain = EnumSet.noneOf(Fault.class);
        for (Finding finding : ToneRule.findings(comparison)) {
            Fault fault = rightWords.contains(finding.fault()) ? rightWords.get(0) : finding.fault();
            named.add(fault);
            if (finding.severity() != Severity.SLIGHT) {
                plain.add(fault);
            }
        }
        named.forEach(fault -> tally.named.merge(fault, 1, Integer::sum));
        plain.forEach(fault -> tally.plain.merge(fault, 1, Integer::sum));
        return comparison;
    }

    private void holdWhatIsPromised() {
        Tally clean = tallies.get("test clean");
        for (Fault fault : LikeFault.ALL) {
            hold(clean.plain.getOrDefault(fault, 0) <= MOST_ALARMS * clean.trials, fault + " on clean takes: " + clean.plain.get(fault) + " of " + clean.trials);
            for (int amount = 0; amount < AMOUNTS_DB.length; amount++) {
                Tally faulty = tallies.get("test " + fault.id() + " by " + Math.round(AMOUNTS_DB[amount]) + " dB");
                hold(faulty.named.getOrDefault(fault, 0) >= LEAST_NAMED[amount] * faulty.trials,
                    fault + " of " + AMOUNTS_DB[amount] + " dB: " + faulty.named.get(fault) + " of " + faulty.trials);
            }
        }
        double left = figures.get("test equaliser, RMS left after moves").stream().mapToDouble(Double::doubleValue).average().orElseThrow();
        hold(left <= MOST_LEFT_DB, "left after moves: " + left + " dB");
    }

    private static void hold(boolean held, String what) {
        if (!held) {
            throw new AssertionError("like another take: " + what);
        }
    }

    private static String name(LikeSources.Source source, String what) {
        return (source.tuning() ? "tuning " : "test ") + what;
    }

    private void figure(LikeSources.Source source, String what, double value) {
        figures.computeIfAbsent(name(source, what), key -> new ArrayList<>()).add(value);
    }

    private static double response(EqChain chain, ThirdOctave band) {
        return chain.responseDb(band.centreHz(), LikeSources.RATE_HZ);
    }

    private static double level(TakeReadings heard, ThirdOctave band) {
        return heard.spectrum().bands().stream().filter(level -> level.band().equals(band)).findFirst().orElseThrow().relativeDb();
    }

    /** Around the mean, because the level does not matter; over the known bands from 80 Hz to 10 kHz. */
    private static double rms(List<ToneDifference.Band> bands, ToDoubleFunction<ToneDifference.Band> value) {
        double[] values = bands.stream().filter(band -> JUDGED.contains(band.band())).mapToDouble(value).toArray();
        double mean = java.util.Arrays.stream(values).average().orElse(0);
        return Math.sqrt(java.util.Arrays.stream(values).map(x -> (x - mean) * (x - mean)).average().orElse(0));
    }

    private void print(PrintStream out) {
        out.println("| takes | trials | " + String.join(" | ", LikeFault.ALL.stream().map(Fault::id).toList()) + " |");
        out.println("|---|---|---|---|---|---|---|---|");
        tallies.forEach((name, tally) -> out.printf("| %s | %d | %s |%n", name, tally.trials, String.join(" | ", LikeFault.ALL.stream()
            .map(fault -> String.format(Locale.ROOT, "%.0f (%.1f) %%", 100.0 * tally.named.getOrDefault(fault, 0) / tally.trials,
                100.0 * tally.plain.getOrDefault(fault, 0) / tally.trials)).toList())));
        out.println();
        out.println("| figure | mean | median | 90 % under |");
        out.println("|---|---|---|---|");
        figures.forEach((name, values) -> {
            double[] sorted = values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
            out.printf(Locale.ROOT, "| %s | %.2f | %.2f | %.2f |%n", name, java.util.Arrays.stream(sorted).average().orElse(0),
                sorted[sorted.length / 2], sorted[Math.min(sorted.length - 1, (int) (0.9 * sorted.length))]);
        });
    }
}
