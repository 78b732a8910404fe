package evenwood.evaluate;

import evenwood.journal.EventKind;
import evenwood.journal.History;
import evenwood.journal.Suspicion;
import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.Function;

/** Simulated months of takes with known drifts and without: what the journal suspects. */
public final class TrendEvaluation implements Evaluation {
    private static final int HISTORIES = 1000;
    /** Another one makes other histories: {@code -Devaluation.options=-Dtrend.seed=20261129}. */
    private static final long SEED = Long.getLong("trend.seed", 0x5EED_0000L);
    private static final double WANTED = 0.95;

    /** @param made a history of a seed   @param right what should be suspected, nothing else */
    private record Kind(String name, Function<SplittableRandom, History> made, List<Suspicion.Kind> right) { }

    @Override
    public void run(PrintStream out) {
        out.println("| history | should be suspected | exactly that | nothing | something else |");
        out.println("|---|---|---|---|---|");
        boolean reached = true;
        for (Kind kind : kinds()) {
            int right = 0;
            int nothing = 0;
            for (int seed = 0; seed < HISTORIES; seed++) {
                List<Suspicion.Kind> found = kind.made.apply(new SplittableRandom(SEED + seed * 31L + kind.name.hashCode())).suspicions();
                right += found.equals(kind.right) ? 1 : 0;
                nothing += found.isEmpty() ? 1 : 0;
            }
            out.printf(Locale.ROOT, "| %s | %s | %.1f %% | %.1f %% | %.1f %% |%n", kind.name, kind.right.isEmpty() ? "nothing" : words(kind.right),
                100.0 * right / HISTORIES, 100.0 * nothing / HISTORIES, 100.0 * (HISTORIES - right - (kind.right.isEmpty() ? 0 : nothing)) / HISTORIES);
            reached &= right >= WANTED * HISTORIES;
        }
        if (!reached) {
            throw new AssertionError("trends: a row is under " + 100 * WANTED + " %");
        }
    }

    private static String words(List<Suspicion.Kind> kinds) {
        return String.join(", ", kinds.stream().map(kind -> kind.name().toLowerCase(Locale.ROOT).replace('_', ' ')).toList());
    }

    private static List<Kind> kinds() {
        return List.of(
            new Kind("nothing happens, 10 to 80 takes", random -> history(random, 10, 80).with(History.NONE, History.NONE, History.NONE, History.NONE), List.of()),
            new Kind("strings and battery changed now and then, no drift", random -> {
                History history = history(random, 30, 80);
                double last = history.lastDay();
                return history.with(History.NONE, History.NONE, History.NONE, History.NONE).event(last * 0.3, EventKind.NEW_STRINGS)
                    .event(last * 0.5, EventKind.NEW_BATTERY).event(last * 0.6, EventKind.NEW_STRINGS);
            }, List.of()),
            new Kind("the player turns the channel up by 8 dB, bit by bit", random -> {
                History history = history(random, 30, 80);
                return history.with(History.NONE, History.NONE, History.NONE, day -> 8 * day / history.lastDay());
            }, List.of()),
            new Kind("the player turns the channel up by 6 dB at once", random -> {
                History history = history(random, 30, 80);
                double at = history.lastDay() * (0.3 + 0.4 * random.nextDouble());
                return history.with(History.NONE, History.NONE, History.NONE, day -> day < at ? 0 : 6);
            }, List.of()),
            new Kind("strings lose 4 to 8 dB of treble since they were put on, 25 takes or more", random -> {
                History history = history(random, 40, 80);
                double put = history.lastDay() * (0.1 + 0.25 * random.nextDouble());
                double loss = 4 + 4 * random.nextDouble();
                return history.with(day -> day < put ? -1 : -loss * (1 - Math.exp(-2 * (day - put) / (history.lastDay() - put))) / (1 - Math.exp(-2)),
                    History.NONE, History.NONE, History.NONE).event(put, EventKind.NEW_STRINGS);
            }, List.of(Suspicion.Kind.STRINGS_LOSE_TREBLE)),
            new Kind("battery: output steady, then 6 to 9 dB less in the last third, 25 takes or more", random -> {
                History history = history(random, 40, 80);
                double put = history.lastDay() * 0.3 * random.nextDouble();
                double loss = 6 + 3 * random.nextDouble();
                double knee = put + (history.lastDay() - put) * 0.65;
                return history.with(History.NONE, day -> day < knee ? 0 : -loss * (day - knee) / (history.lastDay() - knee), History.NONE, History.NONE)
                    .event(put, EventKind.NEW_BATTERY);
            }, List.of(Suspicion.Kind.OUTPUT_FALLS)),
            new Kind("a channel hisses 4 to 8 dB more from one day on", random -> {
                History history = history(random, 30, 80);
                double at = history.lastDay() * (0.25 + 0.5 * random.nextDouble());
                double more = 4 + 4 * random.nextDouble();
                return history.with(History.NONE, History.NONE, day -> day < at ? 0 : more, History.NONE);
            }, List.of(Suspicion.Kind.CHANNEL_NOISIER)),
            new Kind("a channel hisses more bit by bit, 5 to 8 dB in all", random -> {
                History history = history(random, 30, 80);
                double more = 5 + 3 * random.nextDouble();
                return history.with(History.NONE, History.NONE, day -> more * day / history.lastDay(), History.NONE);
            }, List.of(Suspicion.Kind.CHANNEL_NOISIER)));
    }

    private static History history(SplittableRandom random, int fewest, int most) {
        return new History(random.nextLong(), fewest + random.nextInt(most - fewest + 1));
    }
}
