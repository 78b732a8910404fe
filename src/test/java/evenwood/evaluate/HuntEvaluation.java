package evenwood.evaluate;

import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.NoiseParts;
import evenwood.coach.hunt.RigFacts;
import evenwood.rig.HuntTable;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.takes.NoisyRig;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Simulated noise hunts: how often the planted cause stands first within six trials, in rigs as physics has them ({@link NoisyRig}); and
 * how often a hunt gets sure of a cause from the table when the planted one is none of them.
 */
public final class HuntEvaluation implements Evaluation {
    private static final int SEEDS = 50;
    private static final int TRIALS = 6;
    private static final double FEWEST_FOUND = 0.9;
    private static final double MOST_WRONGLY_SURE = 0.15;
    /** Other rigs: {@code -Devaluation.options=-Dhunt.seed=1}. */
    private static final long SEED = Long.getLong("hunt.seed", 29_112_026L);
    private static final List<String> RIGS = List.of("stage", "studio", "home", "line-out");

    @Override
    public void run(PrintStream out) {
        Presets presets = new Presets(Path.of("nowhere"));
        HuntTable table = presets.hunt("noise");
        Map<String, Set<HuntTable.Need>> rigs = new LinkedHashMap<>();
        rigs.put("no rig file", RigFacts.ALL);
        RIGS.forEach(name -> rigs.put(name, RigFacts.of(Rig.read(Path.of("src/test/resources/rigs", name + ".yaml"), presets))));
        Map<String, Map<String, int[]>> found = new TreeMap<>();
        int first = 0;
        int all = 0;
        int trials = 0;
        for (HuntTable.Cause cause : table.causes()) {
            for (Map.Entry<String, Set<HuntTable.Need>> rig : rigs.entrySet()) {
                if (!rig.getValue().containsAll(cause.needs())) {
                    continue;
                }
                int[] counts = found.computeIfAbsent(cause.id(), id -> new TreeMap<>()).computeIfAbsent(rig.getKey(), id -> new int[2]);
                for (int seed = 0; seed < SEEDS; seed++) {
                    HuntProgress end = hunted(table, rig.getValue(), new NoisyRig(cause.id(), SEED + 1000L * seed + 31L * rig.getKey().hashCode() + cause.id().hashCode()));
                    boolean right = end.hunt().ranking().get(0).cause().equals(cause.id());
                    counts[0] += right ? 1 : 0;
                    counts[1]++;
                    first += right ? 1 : 0;
                    all++;
                    trials += end.steps().size();
                }
            }
        }
        table(out, rigs, found, table);
        out.printf("%nFirst in %d of %d hunts (%.1f %%), %.1f trials on average.%n", first, all, 100.0 * first / all, (double) trials / all);
        int sure = unlisted(out, rigs, table);
        int unlisted = NoisyRig.UNLISTED.size() * rigs.size() * SEEDS;
        out.printf("%nSure of a listed cause in %d of %d hunts whose cause is none of them (%.1f %%).%n", sure, unlisted, 100.0 * sure / unlisted);
        if (sure > MOST_WRONGLY_SURE * unlisted) {
            throw new AssertionError("hunts: sure of a listed cause in " + sure + " of " + unlisted + " whose cause is none of them");
        }
        if (first < FEWEST_FOUND * all) {
            throw new AssertionError("hunts: the planted cause is first in " + first + " of " + all);
        }
    }

    /** @return how often a hunt was sure, which is always wrong here */
    private static int unlisted(PrintStream out, Map<String, Set<HuntTable.Need>> rigs, HuntTable table) {
        int all = 0;
        out.printf("%n| planted, in no table | sure of a listed cause | not sure |%n|---|---|---|%n");
        for (String cause : NoisyRig.UNLISTED) {
            int sure = 0;
            for (Map.Entry<String, Set<HuntTable.Need>> rig : rigs.entrySet()) {
                for (int seed = 0; seed < SEEDS; seed++) {
                    HuntProgress end = hunted(table, rig.getValue(), new NoisyRig(cause, SEED + 1000L * seed + 31L * rig.getKey().hashCode() + cause.hashCode()));
                    sure += end.standing() == HuntProgress.Standing.FOUND ? 1 : 0;
                }
            }
            double share = (double) sure / (rigs.size() * SEEDS);
            out.printf("| %s | %.0f %% | %.0f %% |%n", cause, 100 * share, 100 * (1 - share));
            all += sure;
        }
        return all;
    }

    private static HuntProgress hunted(HuntTable table, Set<HuntTable.Need> facts, NoisyRig rig) {
        NoiseParts before = rig.before();
        HuntProgress progress = HuntProgress.start(table, facts, before, Optional.empty());
        for (int trial = 0; trial < TRIALS && progress.next().isPresent(); trial++) {
            String next = progress.next().get();
            progress = progress.after(next, rig.after(next));
        }
        return progress;
    }

    private static void table(PrintStream out, Map<String, Set<HuntTable.Need>> rigs, Map<String, Map<String, int[]>> found, HuntTable table) {
        out.println("| planted | " + String.join(" | ", rigs.keySet()) + " |");
        out.println("|---|" + "---|".repeat(rigs.size()));
        for (HuntTable.Cause cause : table.causes()) {
            StringBuilder row = new StringBuilder("| " + cause.id());
            for (String rig : rigs.keySet()) {
                int[] counts = found.getOrDefault(cause.id(), Map.of()).get(rig);
                row.append(" | ").append(counts == null ? "–" : String.format("%.0f %%", 100.0 * counts[0] / counts[1]));
            }
            out.println(row + " |");
        }
    }
}
