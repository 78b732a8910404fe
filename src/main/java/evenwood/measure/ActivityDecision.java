package evenwood.measure;

import evenwood.sound.Decibels;

/**
 * Decides playing, quiet or neither for every remembered hop of an {@link ActivityMeter}.
 *
 * <p>How: a frame is <i>raised</i> when some band lies above the floor by more than steady noise ever does, <i>clear</i>
 * when two bands do with 3 dB to spare or one with 12 dB. A hop is covered by two frames. PLAYING: both are clear, within
 * 50 dB of the loud playing, in a run of raised hops that lasts two hops at least and is not all click. QUIET: both are
 * down, and so are two before and one after, for four hops at least. Everything else is NEITHER. Digital silence of four hops is
 * quiet when the take has no other floor. Without any floor all sound is playing: it changes all the time.
 * <p>Source: our choice throughout; the figures are tested in {@code ActivityMeterTest}.
 */
final class ActivityDecision {
    private static final double LOUD_SHARE = 0.95;
    private static final double LOW_SHARE = 0.01;
    private static final double DEEPEST_PLAYING_DB = 50;
    private static final double CLEAR_DB = 3;
    private static final double CLEAR_ALONE_DB = 12;
    private static final double CLICK_DB = 6;
    private static final int SHORTEST_PLAYING = 2;
    private static final int SHORTEST_QUIET = 4;
    private static final int GUARD_AFTER_SOUND = 2;
    private static final int GUARD_BEFORE_SOUND = 1;
    private static final double LEAST_SECONDS = 1;
    private static final byte DOWN = 0;
    private static final byte RAISED = 1;
    private static final byte CLEAR = 2;
    private static final byte EMPTY = 3;

    private final HopGrid grid;
    private final ActivityFrames levels;
    private final HopHistory impulses;
    private final long first;
    private final int hops;

    ActivityDecision(HopGrid grid, ActivityBands bands, HopHistory history, HopHistory impulses) {
        this.grid = grid;
        this.impulses = impulses;
        levels = new ActivityFrames(bands, history);
        first = history.firstHop();
        hops = levels.count();
    }

    ActivityReading reading() {
        double loudDbfs = levels.percentileDbfs(LOUD_SHARE);
        SteadyFloors floors = new SteadyFloors(levels, grid.hopSeconds(), loudDbfs);
        byte[] frames = new byte[hops];
        for (int i = 0; i < hops; i++) {
            frames[i] = levels.isEmpty(i) ? EMPTY : floors.found() ? frameState(i, floors) : CLEAR;
        }
        byte[] states = new byte[hops];
        if (floors.found() || hops * grid.hopSeconds() >= LEAST_SECONDS) {
            markPlaying(frames, states, loudDbfs - DEEPEST_PLAYING_DB);
            markQuiet(frames, states, DOWN);
        }
        if (!floors.found()) {
            markQuiet(frames, states, EMPTY);
        }
        return new ActivityReading(grid, first, states, floorDbfs(states));
    }

    private byte frameState(int frame, SteadyFloors floors) {
        byte lowest = CLEAR;
        for (SteadyFloor floor : floors.near(frame)) {
            byte state = frameState(frame, floor);
            lowest = state < lowest ? state : lowest;
        }
        return lowest;
    }

    private byte frameState(int frame, SteadyFloor floor) {
        boolean raised = false;
        boolean alone = false;
        int clear = 0;
        for (int b = 0; b < levels.bands().count(); b++) {
            double over = levels.bandDb(frame, b) - floor.bandDb(b) - levels.bands().reachDb(b);
            raised |= over > 0;
            alone |= over > CLEAR_ALONE_DB;
            clear += over > CLEAR_DB ? 1 : 0;
        }
        return alone || clear >= 2 ? CLEAR : raised ? RAISED : DOWN;
    }

    private void markPlaying(byte[] frames, byte[] states, double lowestDbfs) {
        int start = 0;
        while (start < hops) {
            int end = start;
            boolean sound = false;
            while (end < hops && isUp(frames[end]) && isUp(frames[next(end)])) {
                sound |= isClear(frames, end) && impulseDb(end) < CLICK_DB;
                end++;
            }
            if (sound && end - start >= SHORTEST_PLAYING) {
                for (int i = start; i < end; i++) {
                    boolean deep = levels.levelDbfs(i) < lowestDbfs;
                    states[i] = isClear(frames, i) && !deep ? ActivityReading.PLAYING : ActivityReading.NEITHER;
                }
            }
            start = Math.max(end, start + 1);
        }
    }

    private void markQuiet(byte[] frames, byte[] states, byte wanted) {
        int before = wanted == EMPTY ? 0 : GUARD_BEFORE_SOUND;
        int after = wanted == EMPTY ? 0 : GUARD_AFTER_SOUND;
        int start = 0;
        while (start < hops) {
            int end = start;
            while (end < hops && frames[end] == wanted) {
                end++;
            }
            // The run is of frames; hop i is covered by frames i and i + 1, and the take's own ends need no guard.
            int from = start == 0 ? 0 : start + after;
            int to = end == hops ? hops : end - 1 - before;
            if (to - from >= SHORTEST_QUIET) {
                java.util.Arrays.fill(states, from, to, ActivityReading.QUIET);
            }
            start = Math.max(end, start + 1);
        }
    }

    private double floorDbfs(byte[] states) {
        double power = 0;
        int count = 0;
        for (int i = 0; i < hops; i++) {
            if (states[i] == ActivityReading.QUIET) {
                power += levels.isEmpty(i) ? 0 : Decibels.toPower(levels.levelDbfs(i));
                count++;
            }
        }
        return count > 0 ? Decibels.ofPower(power / count) : levels.percentileDbfs(LOW_SHARE);
    }

    private double impulseDb(int hop) {
        long at = first + hop;
        return at >= impulses.firstHop() && at < impulses.endHop() ? impulses.get(at, 0) : 0;
    }

    private boolean isClear(byte[] frames, int hop) {
        return frames[hop] == CLEAR && frames[next(hop)] == CLEAR;
    }

    private int next(int hop) {
        return Math.min(hop + 1, hops - 1);
    }

    private static boolean isUp(byte frame) {
        return frame == RAISED || frame == CLEAR;
    }
}
