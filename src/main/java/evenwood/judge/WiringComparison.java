package evenwood.judge;

import evenwood.measure.TakeReadings;
import evenwood.wiring.ChainReport;
import evenwood.wiring.WayReport;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The take beside what its chain should give.
 *
 * <p>How: usual playing against the pickup preset's usual level through the chain, where the gain's position is known; the
 * distance from playing to hiss against the predicted one, which no gain changes. Uncertainty: the preset's spread between
 * instruments, and 3 dB for who plays and how (our choice).
 *
 * @param levelDb          heard − predicted, usual playing; empty when the gain's position or full scale is not known
 * @param levelDeviationDb its standard deviation
 * @param noiseDb          how much more hiss there is against the playing than predicted; empty when there was no quiet
 * @param predictedBassCornerHz where the chain's bass is 3 dB down; empty when that is under hearing
 * @param heardBassCornerHz where the take's bass is 3 dB down; empty when none was lost or nobody can say
 * @param loadedProbability that the pickup sees too low an impedance; empty when nobody can say
 * @param statements       what this supports, in words
 */
public record WiringComparison(OptionalDouble levelDb, double levelDeviationDb, OptionalDouble noiseDb, OptionalDouble predictedBassCornerHz,
                               OptionalDouble heardBassCornerHz, OptionalDouble loadedProbability, List<Statement> statements) {
    private static final double PLAYER_DEVIATION_DB = 3;
    private static final double HEARING_BEGINS_HZ = 20;
    /** Twice its standard deviation: five chains in a hundred are that far off by chance. */
    private static final double NOTABLE = 2;
    private static final double NOISE_NOTABLE_DB = 10;

    public WiringComparison {
        statements = List.copyOf(statements);
    }

    static WiringComparison of(TakeReadings readings, ChainReport report, Optional<LoadedPickup> loaded) {
        WayReport way = report.main();
        double deviation = deviationDb(report);
        OptionalDouble level = levelDb(readings, way);
        OptionalDouble noise = noiseDb(readings, way);
        OptionalDouble predicted = way.bassCornerHz().isPresent() && way.bassCornerHz().getAsDouble() > HEARING_BEGINS_HZ ? way.bassCornerHz() : OptionalDouble.empty();
        OptionalDouble heard = loaded.map(LoadedPickup::heardCornerHz).orElse(OptionalDouble.empty());
        return new WiringComparison(level, deviation, noise, predicted, heard,
            loaded.map(each -> OptionalDouble.of(each.probability())).orElse(OptionalDouble.empty()), statements(level, deviation, noise));
    }

    /** Standard deviation of the level nobody can predict. */
    static double deviationDb(ChainReport report) {
        return Math.hypot(report.connection().pickup().levelSpreadDb(), PLAYER_DEVIATION_DB);
    }

    /** Heard − predicted level of usual playing. */
    static OptionalDouble levelDb(TakeReadings readings, WayReport way) {
        boolean known = way.input().input().digital() && way.input().gainDb().isPresent() && readings.hasPlaying();
        return known ? OptionalDouble.of(readings.playingDbfs() - way.usualDbfs()) : OptionalDouble.empty();
    }

    private static OptionalDouble noiseDb(TakeReadings readings, WayReport way) {
        double heard = readings.playingDbfs() - readings.noise().hissDbfs();
        return readings.hasPlaying() && readings.activity().hasQuiet() && Double.isFinite(heard)
            ? OptionalDouble.of(way.signalToNoiseDb() - heard) : OptionalDouble.empty();
    }

    private static List<Statement> statements(OptionalDouble level, double deviation, OptionalDouble noise) {
        List<Statement> statements = new ArrayList<>();
        level.ifPresent(db -> statements.add(Math.abs(db) <= NOTABLE * deviation ? Statement.of("wiring-heard.level", Math.abs(db), db < 0 ? 0 : 1, NOTABLE * deviation)
            : Statement.of(db < 0 ? "wiring-heard.lower" : "wiring-heard.higher", Math.abs(db), NOTABLE * deviation)));
        if (level.isEmpty()) {
            statements.add(Statement.of("wiring-heard.no-level"));
        }
        noise.ifPresent(db -> statements.add(Statement.of(db > NOISE_NOTABLE_DB ? "wiring-heard.noisier" : "wiring-heard.noise", Math.abs(db), db < 0 ? 0 : 1)));
        return statements;
    }
}
