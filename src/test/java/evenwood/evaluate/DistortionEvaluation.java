package evenwood.evaluate;

import evenwood.measure.DistortionReading.Verdict;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.function.Predicate;

/** The distortion meter against takes whose truth is known: what it finds, what it invents, and how sure it is of it. */
public final class DistortionEvaluation implements Evaluation {
    private static final double LEAST_AUC = 0.98;
    private static final double LEAST_STAGE_RIGHT = 0.95;
    /** The share of distorted takes that the model's probability supposes (DistortionModel). */
    private static final double PRIOR = 0.1;
    private static final double[] EDGES = {0, 0.05, 0.25, 0.5, 0.75, 0.95, 1.0001};

    private List<DistortionExample> examples;
    private PrintStream out;

    @Override
    public void run(PrintStream to) {
        out = to;
        examples = DistortionExamples.all();
        findings();
        double auc = ranking();
        double stageRight = stages();
        onsets();
        falseAlarms();
        reliability();
        long alarms = count(e -> e.isClean() && e.isClear());
        if (auc < LEAST_AUC || stageRight < LEAST_STAGE_RIGHT || alarms > 0) {
            throw new AssertionError(String.format(Locale.ROOT, "distortion: AUC %.3f, stage right %.3f, %d clear false alarms", auc, stageRight, alarms));
        }
    }

    private void findings() {
        out.printf("%n| stage | driven by dB | takes | hardest tenth short by dB, mean | found | mean probability |%n|---|---|---|---|---|---|%n");
        for (StageKind kind : StageKind.values()) {
            for (double drive : new double[]{0, 1, 2, 3, 6, 10}) {
                List<DistortionExample> some = examples.stream().filter(e -> e.kind() == kind && e.driveDb() == drive).toList();
                if (!some.isEmpty()) {
                    out.printf(Locale.ROOT, "| %s | %.0f | %d | %.1f | %.0f %% | %.2f |%n", word(kind), drive, some.size(),
                        some.stream().mapToDouble(DistortionExample::shortDb).average().orElse(0),
                        100.0 * some.stream().filter(DistortionExample::isTold).count() / some.size(),
                        some.stream().mapToDouble(e -> e.reading().probability()).average().orElse(0));
                }
            }
        }
    }

    private double ranking() {
        out.printf("%n| against clean | takes | ROC AUC, audible | takes | ROC AUC, all amounts |%n|---|---|---|---|---|%n");
        List<Double> clean = scores(DistortionExample::isClean);
        for (StageKind kind : StageKind.values()) {
            if (kind != StageKind.CLEAN) {
                aucRow(word(kind), e -> e.kind() == kind, clean);
            }
        }
        return aucRow("all", e -> !e.isClean(), clean);
    }

    private double aucRow(String name, Predicate<DistortionExample> which, List<Double> clean) {
        List<Double> audible = scores(which.and(DistortionExample::isAudible));
        List<Double> all = scores(which);
        double auc = Ranking.auc(audible, clean);
        out.printf(Locale.ROOT, "| %s | %d | %.3f | %d | %.3f |%n", name, audible.size(), auc, all.size(), Ranking.auc(all, clean));
        return auc;
    }

    private double stages() {
        long told = count(e -> e.isAudible() && e.isTold());
        long right = count(e -> e.isAudible() && e.isTold() && e.isStageRight());
        out.printf(Locale.ROOT, "%nStage right in %d of %d audible takes that were told (%.1f %%); %d audible takes in all.%n", right, told, 100.0 * right / told, count(DistortionExample::isAudible));
        return (double) right / told;
    }

    private void onsets() {
        out.printf("%n| onset | takes | median error dB | 68 %% within dB |%n|---|---|---|---|%n");
        for (StageKind kind : StageKind.values()) {
            double[] errors = examples.stream().filter(e -> e.kind() == kind && e.isAudible() && e.reading().onsetDbfs().isPresent())
                .mapToDouble(e -> e.reading().onsetDbfs().getAsDouble() - e.onsetDbfs()).toArray();
            if (errors.length > 0) {
                double[] sizes = java.util.Arrays.stream(errors).map(Math::abs).toArray();
                out.printf(Locale.ROOT, "| %s | %d | %+.1f | %.1f |%n", word(kind), errors.length, Ranking.quantile(errors, 0.5), Ranking.quantile(sizes, 0.68));
            }
        }
    }

    private void falseAlarms() {
        TreeMap<String, List<DistortionExample>> byInstrument = new TreeMap<>();
        examples.stream().filter(DistortionExample::isClean).forEach(e -> byInstrument.computeIfAbsent(e.instrument(), k -> new ArrayList<>()).add(e));
        out.printf("%n| clean takes of | takes | told distorted | of them clear or strong | unsure | highest probability |%n|---|---|---|---|---|---|%n");
        byInstrument.forEach((name, some) -> out.printf(Locale.ROOT, "| %s | %d | %d | %d | %d | %.2f |%n", name, some.size(),
            some.stream().filter(DistortionExample::isTold).count(), some.stream().filter(DistortionExample::isClear).count(), some.stream().filter(e -> e.reading().verdict() == Verdict.UNSURE).count(),
            some.stream().mapToDouble(e -> e.reading().probability()).max().orElse(0)));
    }

    /** Clean and audible takes weighted as the prior says; inaudible ones are left out. */
    private void reliability() {
        double cleanWeight = (1 - PRIOR) / count(DistortionExample::isClean);
        double audibleWeight = PRIOR / count(DistortionExample::isAudible);
        out.printf("%n| probability told | clean takes | distorted takes | share distorted, prior %.1f |%n|---|---|---|---|%n", PRIOR);
        for (int i = 0; i + 1 < EDGES.length; i++) {
            double low = EDGES[i];
            double high = EDGES[i + 1];
            long clean = count(e -> e.isClean() && e.reading().probability() >= low && e.reading().probability() < high);
            long audible = count(e -> e.isAudible() && e.reading().probability() >= low && e.reading().probability() < high);
            out.printf(Locale.ROOT, "| %.2f to %.2f | %d | %d | %.2f |%n", low, Math.min(1, high), clean, audible,
                audible * audibleWeight / Math.max(1e-12, audible * audibleWeight + clean * cleanWeight));
        }
    }

    private List<Double> scores(Predicate<DistortionExample> which) {
        return examples.stream().filter(which).map(e -> e.reading().probability()).toList();
    }

    private long count(Predicate<DistortionExample> which) {
        return examples.stream().filter(which).count();
    }

    private static String word(StageKind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
