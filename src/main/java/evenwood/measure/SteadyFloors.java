package evenwood.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The noise of a take, which may change when a knob or the player moves.
 *
 * <p>How: the lowest steady stretch of all is a floor, unless it contradicts itself (see {@link SteadyFloor}) and is not
 * far below the playing. Of the rest a steady stretch is one too if it is a known floor moved by the same amount in every
 * band (a gain knob), or if frames like it last three seconds in all, have risen where the mains hum (35 to 140 Hz), and
 * hold to within 1 dB (hum that changes with the hand or the place). A held note is neither. A frame is held against the
 * floors that come before and after it in time. Source: our choice, after Martin 2001.
 */
final class SteadyFloors {
    private static final int MOST_FLOORS = 6;
    private static final int MOST_HUM_TRIALS = 20;
    private static final double FAR_BELOW_DB = 25;
    private static final double MOST_CONTRADICTIONS = 0.01;
    private static final double LEAST_SHIFT_DB = 2;
    private static final double EVEN_SHIFT_DB = 1;
    private static final double HUM_SECONDS = 3;
    private static final double HUM_HOLDS_DB = 1;
    private static final double HUM_RISES_DB = 3;
    private static final double HUM_TOP_HZ = 140;
    private static final int ANCHOR_FRAMES = 4;

    private final ActivityFrames frames;
    private final double hopSeconds;
    private final SteadyStretch stretch;
    private final List<SteadyFloor> floors = new ArrayList<>();
    private final boolean[] taken;
    private int[] before = {};
    private int[] after = {};

    SteadyFloors(ActivityFrames frames, double hopSeconds, double loudDbfs) {
        this.frames = frames;
        this.hopSeconds = hopSeconds;
        stretch = new SteadyStretch(frames);
        taken = new boolean[frames.count()];
        findFirst(loudDbfs);
        if (found()) {
            findOthers();
            lay();
        }
    }

    boolean found() {
        return !floors.isEmpty();
    }

    /** The floor at work before the frame and the one after it; often the same. */
    List<SteadyFloor> near(int frame) {
        SteadyFloor one = floors.get(before[frame]);
        SteadyFloor other = floors.get(after[frame]);
        return one == other ? List.of(one) : List.of(one, other);
    }

    private void findFirst(double loudDbfs) {
        int start = stretch.lowest();
        if (start < 0) {
            return;
        }
        double levelDbfs = 0;
        for (int i = start; i < start + SteadyStretch.FRAMES; i++) {
            levelDbfs += frames.levelDbfs(i) / SteadyStretch.FRAMES;
        }
        SteadyFloor floor = new SteadyFloor(frames, stretch.bandMeansDb(start));
        int most = (int) Math.max(2 * SteadyStretch.FRAMES, MOST_CONTRADICTIONS * frames.count());
        if (levelDbfs < loudDbfs - FAR_BELOW_DB || floor.contradictions() <= most) {
            add(floor);
        }
    }

    private void findOthers() {
        int humTrials = 0;
        for (int start : stretch.others(taken)) {
            if (floors.size() == MOST_FLOORS || humTrials == MOST_HUM_TRIALS) {
                return;
            }
            if (!taken[start] && !taken[start + SteadyStretch.FRAMES - 1]) {
                double[] bandDb = stretch.bandMeansDb(start);
                boolean[] risen = risen(bandDb);
                boolean hum = hasRisenLow(risen);
                humTrials += hum ? 1 : 0;
                if (isShifted(bandDb) || hum && holdsLong(bandDb, risen)) {
                    add(new SteadyFloor(frames, bandDb));
                }
            }
        }
    }

    private void add(SteadyFloor floor) {
        floors.add(floor);
        for (int i = 0; i < taken.length; i++) {
            taken[i] |= floor.covers(i);
        }
    }

    private boolean isShifted(double[] bandDb) {
        for (SteadyFloor floor : floors) {
            double shift = Arrays.stream(bandDb).average().orElse(0) - floor.meanDb();
            boolean even = Math.abs(shift) >= LEAST_SHIFT_DB;
            for (int b = 0; b < bandDb.length && even; b++) {
                double margin = EVEN_SHIFT_DB + 3 * frames.bands().scatterDb(b) / Math.sqrt(SteadyStretch.FRAMES);
                even = Math.abs(bandDb[b] - floor.bandDb(b) - shift) <= margin;
            }
            if (even) {
                return true;
            }
        }
        return false;
    }

    private boolean[] risen(double[] bandDb) {
        boolean[] risen = new boolean[bandDb.length];
        for (int b = 0; b < risen.length; b++) {
            risen[b] = bandDb[b] - floors.get(0).bandDb(b) > HUM_RISES_DB + frames.bands().scatterDb(b);
        }
        return risen;
    }

    private boolean hasRisenLow(boolean[] risen) {
        for (int b = 0; b < risen.length && frames.bands().lowerHz(b) < HUM_TOP_HZ; b++) {
            if (risen[b]) {
                return true;
            }
        }
        return false;
    }

    private boolean holdsLong(double[] bandDb, boolean[] risen) {
        int count = 0;
        for (int i = 0; i < frames.count(); i++) {
            boolean like = true;
            for (int b = 0; b < bandDb.length && like; b++) {
                double off = frames.bandDb(i, b) - bandDb[b];
                like = risen[b] ? Math.abs(off) <= HUM_HOLDS_DB : off <= frames.bands().reachDb(b);
            }
            count += like ? 1 : 0;
        }
        return count * hopSeconds >= HUM_SECONDS;
    }

    /** For each frame the floor last heard and the floor heard next: the lowest one that covers four frames in a row. */
    private void lay() {
        int[] covering = new int[frames.count()];
        for (int i = 0; i < covering.length; i++) {
            covering[i] = lowestLike(i);
        }
        before = new int[covering.length];
        after = new int[covering.length];
        int known = -1;
        int run = 0;
        for (int i = 0; i < covering.length; i++) {
            run = i > 0 && covering[i] == covering[i - 1] ? run + 1 : 1;
            known = covering[i] >= 0 && run >= ANCHOR_FRAMES ? covering[i] : known;
            before[i] = known;
        }
        known = -1;
        run = 0;
        for (int i = covering.length - 1; i >= 0; i--) {
            run = i + 1 < covering.length && covering[i] == covering[i + 1] ? run + 1 : 1;
            known = covering[i] >= 0 && run >= ANCHOR_FRAMES ? covering[i] : known;
            after[i] = known;
        }
        for (int i = 0; i < covering.length; i++) {
            int either = Math.max(0, Math.max(before[i], after[i]));
            before[i] = before[i] < 0 ? after[i] < 0 ? either : after[i] : before[i];
            after[i] = after[i] < 0 ? before[i] : after[i];
        }
    }

    private int lowestLike(int frame) {
        int best = -1;
        for (int f = 0; f < floors.size(); f++) {
            if (!frames.isEmpty(frame) && floors.get(f).isLike(frame) && (best < 0 || floors.get(f).meanDb() < floors.get(best).meanDb())) {
                best = f;
            }
        }
        return best;
    }
}
