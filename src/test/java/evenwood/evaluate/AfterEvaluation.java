package evenwood.evaluate;

import evenwood.coach.Assessment;
import evenwood.coach.Coach;
import evenwood.coach.FaultChange;
import evenwood.coach.FaultChange.Change;
import evenwood.coach.PeakForecast;
import evenwood.eq.EqChain;
import evenwood.judge.Fault;
import evenwood.judge.TargetWindow;
import evenwood.judge.ToneComparison;
import evenwood.measure.TakeReadings;
import evenwood.sound.SoundFormat;
import evenwood.takes.Faults;
import evenwood.takes.Heard;
import evenwood.takes.Mains;
import evenwood.takes.PackagedTakes;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.TreeMap;

/**
 * Was it better? Takes before and after a known change, other phrases in another key before than after: a fault taken out,
 * put in, left as it was, or never there. Changes are 3 to 9 dB.
 */
public final class AfterEvaluation implements Evaluation {
    private static final double LEAST_DB = 3;
    private static final double SPAN_DB = 6;
    private static final double WANTED_SHARE = 0.95;
    private static final int RATE_HZ = LikeSources.RATE_HZ;
    private static final SoundFormat FORMAT = SoundFormat.mono(RATE_HZ);

    /** @param right said as it was  @param all trials  @param sure mean confidence */
    private record Score(int right, int all, double sure) {
        Score with(boolean hit, double confidence) {
            return new Score(right + (hit ? 1 : 0), all + 1, sure + confidence);
        }
    }

    private final Coach coach = new Coach(TargetWindow.DEFAULT);
    private final Map<String, Score> scores = new TreeMap<>();
    private final List<String> misses = new ArrayList<>();
    private SplittableRandom random;

    @Override
    public void run(PrintStream out) {
        int stride = Integer.getInteger("evaluate.stride", 1);
        List<LikeSources.Source> sources = LikeSources.all();
        for (int i = 0; i < sources.size(); i += stride) {
            random = new SplittableRandom(900 + i);
            source(sources.get(i));
        }
        print(out);
    }

    private void source(LikeSources.Source source) {
        List<float[]> songs = source.songs().stream().map(PackagedTakes::samples).toList();
        TakeReadings wanted = heard(songs.get(2));
        TakeReadings cleanBefore = heard(songs.get(0));
        TakeReadings cleanNow = heard(songs.get(1));
        for (Fault fault : LikeFault.ALL) {
            double amountDb = LEAST_DB + SPAN_DB * random.nextDouble();
            EqChain chain = LikeFault.chain(fault, amountDb, source.lowestHz(), random);
            TakeReadings faultBefore = heard(LikeFault.through(chain, songs.get(0)));
            TakeReadings faultNow = heard(LikeFault.through(chain, songs.get(1)));
            String kind = group(source) + "tone";
            tally(kind, source, fault, Change.BETTER, faultBefore, cleanNow, wanted);
            tally(kind, source, fault, Change.WORSE, cleanBefore, faultNow, wanted);
            tally(kind, source, fault, Change.SAME, faultBefore, faultNow, wanted);
            tally(kind, source, fault, Change.SAME, cleanBefore, cleanNow, wanted);
        }
        added(source, Fault.HUM, songs, (clean, db, seed) -> Faults.mains(clean, RATE_HZ, Mains.Origin.MAGNETIC, 50.02, 0, -48 + db, seed).samples());
        added(source, Fault.HISS, songs, (clean, db, seed) -> Faults.hiss(clean, RATE_HZ, -55 + db, 0.3, seed).samples());
        added(source, Fault.TOO_HOT, songs, (clean, db, seed) -> gained(clean, 4 + db));
        added(source, Fault.TOO_QUIET, songs, (clean, db, seed) -> gained(clean, -28 - db));
        added(source, Fault.CLIPPING, songs, (clean, db, seed) -> Faults.converterClip(clean, 2 + db, 24).samples());
    }

    /** Puts a fault into a take, some decibels more of it than the least. */
    private interface Injection {
        float[] into(float[] clean, double moreDb, long seed);
    }

    private void added(LikeSources.Source source, Fault fault, List<float[]> songs, Injection injection) {
        double moreDb = LEAST_DB + SPAN_DB * random.nextDouble();
        TakeReadings littleBefore = heard(injection.into(songs.get(0), 0, random.nextInt()));
        TakeReadings littleNow = heard(injection.into(songs.get(1), 0, random.nextInt()));
        TakeReadings muchBefore = heard(injection.into(songs.get(0), moreDb, random.nextInt()));
        TakeReadings muchNow = heard(injection.into(songs.get(1), moreDb, random.nextInt()));
        String kind = group(source) + fault.id();
        tally(kind, source, fault, Change.BETTER, muchBefore, littleNow, null);
        tally(kind, source, fault, Change.WORSE, littleBefore, muchNow, null);
        tally(kind, source, fault, Change.SAME, muchBefore, muchNow, null);
        tally(kind, source, fault, Change.SAME, littleBefore, littleNow, null);
    }

    private void tally(String kind, LikeSources.Source source, Fault fault, Change truth, TakeReadings before, TakeReadings now, TakeReadings wanted) {
        Optional<ToneComparison> toneBefore = Optional.ofNullable(wanted).map(each -> ToneComparison.withTake(before, each));
        Optional<ToneComparison> toneNow = Optional.ofNullable(wanted).map(each -> ToneComparison.withTake(now, each));
        Assessment alone = coach.assess(now, toneNow, Optional.empty(), PeakForecast.fromSpectrum(now));
        // What is not spoken of is taken as "same".
        Optional<FaultChange> said = coach.comparedWith(alone, before, toneBefore, OptionalDouble.empty()).comparison().orElseThrow()
            .faults().stream().filter(change -> change.fault() == fault).findFirst();
        boolean right = said.map(FaultChange::change).orElse(Change.SAME) == truth;
        scores.merge(kind + (truth == Change.SAME ? ", no change" : ", changed"), new Score(0, 0, 0).with(right, said.map(FaultChange::confidence).orElse(1.0)),
            (a, b) -> new Score(a.right + b.right, a.all + b.all, a.sure + b.sure));
        if (!right) {
            misses.add(source.id() + " " + fault.id() + " " + truth.id() + ", said " + said.map(change -> change.change().id()
                + String.format(Locale.ROOT, " %.1f ± %.1f", change.changeDb().orElse(0), change.deviationDb().orElse(0))).orElse("nothing"));
        }
    }

    /** With all meters: noise and level are compared too. */
    private static TakeReadings heard(float[] samples) {
        return Heard.readings(samples, FORMAT);
    }

    private static String group(LikeSources.Source source) {
        return source.tuning() ? "tuning " : "test ";
    }

    private static float[] gained(float[] clean, double db) {
        float[] louder = clean.clone();
        for (int i = 0; i < louder.length; i++) {
            louder[i] *= (float) Math.pow(10, db / 20);
        }
        return louder;
    }

    private void print(PrintStream out) {
        boolean reached = true;
        out.println("| takes | pairs | right | mean confidence |");
        out.println("|---|---|---|---|");
        scores.forEach((kind, score) -> out.printf(Locale.ROOT, "| %s | %d | %.1f %% | %.2f |%n", kind, score.all, 100.0 * score.right / score.all, score.sure / score.all));
        if (Boolean.getBoolean("evaluate.misses")) {
            misses.forEach(out::println);
        }
        for (String truth : new String[] {", changed", ", no change"}) {
            total(out, "test", truth);
            // Sources that figures were set on are no proof, but what goes wrong even there is wrong.
            Score all = total(out, "", truth);
            reached &= all.right >= WANTED_SHARE * all.all;
        }
        if (!reached) {
            throw new AssertionError("was it better: right verdicts under " + 100 * WANTED_SHARE + " %");
        }
    }

    private Score total(PrintStream out, String group, String truth) {
        Score total = scores.entrySet().stream().filter(entry -> entry.getKey().startsWith(group) && entry.getKey().endsWith(truth))
            .map(Map.Entry::getValue).reduce(new Score(0, 0, 0), (a, b) -> new Score(a.right + b.right, a.all + b.all, a.sure + b.sure));
        out.printf(Locale.ROOT, "| **all %stakes%s** | %d | %.1f %% | %.2f |%n", group.isEmpty() ? "" : group + " ", truth, total.all, 100.0 * total.right / total.all, total.sure / total.all);
        return total;
    }
}
