package evenwood.wiring;

import java.util.List;

/**
 * Another way to plug the instrument in.
 *
 * @param report   computed
 * @param verdicts what is still wrong with it
 * @param toBuy    names of what is not at hand; empty when everything is
 */
public record Alternative(ChainReport report, List<WiringVerdict> verdicts, List<String> toBuy) {
    private static final double DANGER_POINTS = 1000;
    private static final double WRONG_POINTS = 100;
    private static final double TOLERABLE_POINTS = 10;
    private static final double GOOD_SIGNAL_TO_NOISE_DB = 85;
    private static final double POINTS_PER_DB = 0.3;

    public Alternative {
        verdicts = List.copyOf(verdicts);
        toBuy = List.copyOf(toBuy);
    }

    static Alternative of(ChainReport report, List<String> toBuy) {
        return new Alternative(report, WiringRules.verdicts(report), toBuy);
    }

    public Fit worst() {
        return WiringRules.worst(verdicts);
    }

    /** Less is better: verdicts first, then noise, then how much stands on the floor. Our choice. */
    double points() {
        double points = verdicts.stream().mapToDouble(verdict -> switch (verdict.fit()) {
            case DANGER -> DANGER_POINTS;
            case WRONG -> WRONG_POINTS;
            case TOLERABLE -> TOLERABLE_POINTS;
            case RIGHT -> 0;
        }).sum();
        return points + POINTS_PER_DB * Math.max(0, GOOD_SIGNAL_TO_NOISE_DB - report.main().signalToNoiseDb()) + report.connection().main().links().size();
    }

    boolean has(WiringFault fault) {
        return verdicts.stream().anyMatch(verdict -> verdict.fault() == fault);
    }
}
