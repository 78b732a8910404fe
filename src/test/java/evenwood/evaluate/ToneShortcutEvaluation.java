package evenwood.evaluate;

import evenwood.eq.EqChain;
import evenwood.judge.Fault;
import evenwood.judge.ToneComparison;
import evenwood.judge.ToneRule;
import evenwood.measure.BandLevel;
import evenwood.measure.NotewiseDifference;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import evenwood.takes.KeptTone;
import evenwood.takes.PackagedTakes;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Whether {@link EqualisedTone} gives what is really read of a filtered take: every fifth source, two faults of 9 dB each,
 * bands of 80 Hz to 10 kHz that stand above the noise.
 */
public final class ToneShortcutEvaluation implements Evaluation {
    private static final List<ThirdOctave> JUDGED = ThirdOctave.range(80, 10_000);
    private static final int STEP = 5;
    private static final double FAULT_DB = 9;
    /** Less than the comparison's own error on clean takes, so that it is not what decides; our choice. */
    private static final double MOST_RMS_DB = 0.75;

    private int trials;
    private int namedHeard;
    private int namedWorkedOut;
    private final List<Double> averages = new ArrayList<>();
    private final List<Double> notewise = new ArrayList<>();

    @Override
    public void run(PrintStream out) {
        SplittableRandom random = new SplittableRandom(21);
        List<LikeSources.Source> sources = LikeSources.all();
        for (int at = 0; at < sources.size(); at += STEP) {
            LikeSources.Source source = sources.get(at);
            TakeReadings clean = KeptTone.readings(source.songs().get(0));
            TakeReadings wanted = KeptTone.readings(source.songs().get(1));
            for (int trial = 0; trial < 2; trial++) {
                Fault fault = LikeFault.ALL.get((at / STEP + 3 * trial) % LikeFault.ALL.size());
                EqChain chain = LikeFault.chain(fault, FAULT_DB, source.lowestHz(), random);
                TakeReadings heard = LikeSources.heard(LikeFault.through(chain, PackagedTakes.samples(source.songs().get(0))));
                TakeReadings workedOut = EqualisedTone.of(clean, chain);
                compare(heard, workedOut, wanted);
                List<Fault> words = LikeFault.words(fault, chain, source.lowestHz());
                trials++;
                namedHeard += isNamed(heard, wanted, words) ? 1 : 0;
                namedWorkedOut += isNamed(workedOut, wanted, words) ? 1 : 0;
            }
        }
        out.println("| worked out − really heard | bands | RMS dB | 95 % under | largest |\n|---|---|---|---|---|");
        double worst = Math.max(print(out, "average spectrum", averages), print(out, "difference to another song, note by note", notewise));
        out.printf("%nNamed beside another song: %d of %d really heard, %d worked out%n", namedHeard, trials, namedWorkedOut);
        if (worst > MOST_RMS_DB) {
            throw new AssertionError("tone shortcut: off by " + worst + " dB RMS");
        }
    }

    private static boolean isNamed(TakeReadings take, TakeReadings wanted, List<Fault> words) {
        return ToneRule.findings(ToneComparison.withTake(take, wanted)).stream().anyMatch(finding -> words.contains(finding.fault()));
    }

    private void compare(TakeReadings heard, TakeReadings workedOut, TakeReadings wanted) {
        for (BandLevel level : heard.spectrum().bands()) {
            if (JUDGED.contains(level.band()) && level.isAboveNoise()) {
                averages.add(workedOut.spectrum().bands().get(heard.spectrum().bands().indexOf(level)).relativeDb() - level.relativeDb());
            }
        }
        ToneDifference other = NotewiseDifference.between(workedOut, wanted);
        for (ToneDifference.Band band : NotewiseDifference.between(heard, wanted).bands()) {
            other.bands().stream().filter(each -> each.band().equals(band.band()) && JUDGED.contains(band.band()))
                .forEach(each -> notewise.add(each.differenceDb() - band.differenceDb()));
        }
    }

    private static double print(PrintStream out, String what, List<Double> errors) {
        double[] sorted = errors.stream().mapToDouble(Math::abs).sorted().toArray();
        double rms = Math.sqrt(errors.stream().mapToDouble(error -> error * error).average().orElseThrow());
        out.printf(Locale.ROOT, "| %s | %d | %.2f | %.2f | %.2f |%n", what, sorted.length, rms, sorted[(int) (0.95 * sorted.length)], sorted[sorted.length - 1]);
        return rms;
    }
}
