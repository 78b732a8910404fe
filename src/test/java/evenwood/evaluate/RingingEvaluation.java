package evenwood.evaluate;

import evenwood.measure.Blocks;
import evenwood.measure.HopGrid;
import evenwood.measure.Ring;
import evenwood.measure.RingingMeter;
import evenwood.measure.ShortTimeSpectrum;
import evenwood.takes.FeedbackLoop;
import evenwood.takes.PackagedTakes;
import evenwood.takes.Take;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * How soon howls are told, and how often none is taken for one: real-instrument takes through simulated feedback loops
 * whose gain rises at 3 s from 6 dB below the threshold of howling to a margin above or below it, and clean takes. Asked: every
 * howl told within half a second, its frequency within 1 %, and none where there is none.
 */
public final class RingingEvaluation implements Evaluation {
    private static final int RATE_HZ = 48_000;
    private static final HopGrid GRID = new HopGrid(RATE_HZ);
    private static final double TURNED_UP_SECONDS = 3;
    private static final double TAKE_SECONDS = 10;
    private static final int TAKES_PER_MARGIN = 40;
    private static final double[] MARGINS_DB = {0.5, 1, 2, 3};
    private static final double[] MARGINS_BELOW_DB = {-1, -2, -4};
    private static final long SEED = 20_261;

    private final SplittableRandom random = new SplittableRandom(SEED);
    private final List<Take> takes = PackagedTakes.catalogue();
    private final List<String> missed = new ArrayList<>();
    private int next;

    @Override
    public void run(PrintStream out) {
        out.println("| margin dB | howls | told | within 0.5 s | median delay s | 90 % delay s | worst s | frequency off % (worst) |");
        out.println("|---|---|---|---|---|---|---|---|");
        for (double margin : MARGINS_DB) {
            out.println(aboveThreshold(margin));
        }
        out.println();
        out.println("| takes without howl | number | seconds | with a false alarm |");
        out.println("|---|---|---|---|");
        for (double margin : MARGINS_BELOW_DB) {
            out.println(belowThreshold(margin));
        }
        out.println(clean());
        if (!missed.isEmpty()) {
            throw new AssertionError("ringing: " + String.join("; ", missed));
        }
    }

    private String aboveThreshold(double marginDb) {
        List<Double> delays = new ArrayList<>();
        int howls = 0;
        int soon = 0;
        double worstPercent = 0;
        for (int i = 0; i < TAKES_PER_MARGIN; i++) {
            FeedbackLoop loop = FeedbackLoop.any(random, RATE_HZ);
            float[] heard = loop.heard(stretch(), (int) (TURNED_UP_SECONDS * RATE_HZ), marginDb);
            FeedbackLoop.Truth truth = loop.truth(marginDb);
            double outSeconds = standsOutSeconds(heard, truth);
            if (outSeconds < 0) {
                continue;
            }
            howls++;
            for (Ring ring : rings(heard)) {
                double offPercent = 100 * Math.abs(ring.frequencyHz() / truth.frequencyHz() - 1);
                if (ring.toldSeconds() > TURNED_UP_SECONDS && offPercent < 1) {
                    delays.add(ring.toldSeconds() - outSeconds);
                    soon += ring.toldSeconds() - outSeconds <= 0.5 ? 1 : 0;
                    worstPercent = Math.max(worstPercent, offPercent);
                    break;
                }
            }
        }
        delays.sort(null);
        if (soon < howls) {
            missed.add(String.format(Locale.ROOT, "at %+.1f dB %d of %d howls told within half a second", marginDb, soon, howls));
        }
        return String.format(Locale.ROOT, "| %+.1f | %d | %d | %d | %.2f | %.2f | %.2f | %.2f |", marginDb, howls, delays.size(), soon,
            delays.get(delays.size() / 2), delays.get(delays.size() * 9 / 10), delays.get(delays.size() - 1), worstPercent);
    }

    private String belowThreshold(double marginDb) {
        int alarms = 0;
        for (int i = 0; i < TAKES_PER_MARGIN; i++) {
            FeedbackLoop loop = FeedbackLoop.any(random, RATE_HZ);
            alarms += rings(loop.heard(stretch(), (int) (TURNED_UP_SECONDS * RATE_HZ), marginDb)).isEmpty() ? 0 : 1;
        }
        noFalseAlarm(alarms, String.format(Locale.ROOT, "a loop at %+.0f dB", marginDb));
        return String.format(Locale.ROOT, "| loop at %+.0f dB | %d | %.0f | %d |", marginDb, TAKES_PER_MARGIN, TAKES_PER_MARGIN * TAKE_SECONDS, alarms);
    }

    private String clean() {
        int alarms = 0;
        double seconds = 0;
        for (Take take : takes) {
            float[] sound = PackagedTakes.samples(take.withRoom(-75, take.seed()));
            seconds += sound.length / (double) RATE_HZ;
            alarms += rings(sound).isEmpty() ? 0 : 1;
        }
        noFalseAlarm(alarms, "clean takes");
        return String.format(Locale.ROOT, "| clean takes | %d | %.0f | %d |", takes.size(), seconds, alarms);
    }

    private void noFalseAlarm(int alarms, String where) {
        if (alarms > 0) {
            missed.add(alarms + " false alarms in " + where);
        }
    }

    /** Ten seconds out of a take, each time of another instrument. */
    private float[] stretch() {
        Take take = takes.get(next * 11 % takes.size()).withRoom(-75, next++);
        float[] sound = PackagedTakes.samples(take);
        int start = (int) (random.nextDouble(0, 8) * RATE_HZ);
        return Arrays.copyOfRange(sound, start, start + (int) (TAKE_SECONDS * RATE_HZ));
    }

    /**
     * When the howl stands 6 dB out of its surroundings (4 to 8 bins away) and stays so, and has grown by 6 dB; −1 when it
     * never does in time to be told of.
     */
    private static double standsOutSeconds(float[] heard, FeedbackLoop.Truth truth) {
        double[] since = {-1};
        Blocks.feed(heard, new ShortTimeSpectrum(GRID, (hop, spectrum) -> {
            int bin = (int) Math.round(truth.frequencyHz() / spectrum.binWidthHz());
            boolean out = standsOut(spectrum.power(), bin);
            since[0] = !out ? -1 : since[0] < 0 ? GRID.startSeconds(hop + 1) : since[0];
        })::accept);
        double seconds = Math.max(since[0], TURNED_UP_SECONDS + 6 / truth.growthDbPerSecond());
        return since[0] < 0 || seconds > TAKE_SECONDS - 0.6 ? -1 : seconds;
    }

    private static boolean standsOut(float[] power, int bin) {
        double around = 0;
        for (int away = 4; away <= 8; away++) {
            around += (power[bin - away] + power[bin + away]) / 10;
        }
        return Math.max(power[bin], Math.max(power[bin - 1], power[bin + 1])) > 4 * around;
    }

    private static List<Ring> rings(float[] sound) {
        RingingMeter meter = new RingingMeter(GRID);
        Blocks.feed(sound, new ShortTimeSpectrum(GRID, meter)::accept);
        return meter.reading().rings();
    }
}
