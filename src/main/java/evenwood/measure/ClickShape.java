package evenwood.measure;

/**
 * Looks closely at a suspected click: is it one sudden jump, alone, and no edge of a hole?
 *
 * <p>How: the first difference must jump out of its neighbours (the corner of a clipped top does not); the third
 * difference must be quiet for 3 ms on both sides (the attack of a note is not); and the sound must not be a hole with a
 * constant or repeated sample on one side, which is a dropout, nor a note that starts out of digital silence.
 * Source: our choice.
 */
final class ClickShape {
    private static final double NEAR_SECONDS = 0.003;
    private static final double OWN_SECONDS = 0.000_25;
    private static final double HOLE_SECONDS = 0.000_4;
    private static final double STILL_SOUNDING_SECONDS = 0.02;
    private static final double LONGEST_REPEAT_SECONDS = 0.06;
    private static final double OVER_BEFORE = 8;
    private static final double OVER_AFTER = 6;
    private static final double JUMP_OVER_NEIGHBOURS = 2;
    private static final int NEIGHBOURS_FROM = 2;
    private static final int NEIGHBOURS_TO = 8;
    private static final int REPEAT_FRAMES = 12;

    private final int lag;
    private final int nearFrames;
    private final int ownFrames;
    private final int holeFrames;
    private final int soundingFrames;
    private final int longestRepeat;
    private final RecentSound recent;

    ClickShape(int sampleRateHz, int lag, RecentSound recent) {
        this.lag = lag;
        this.recent = recent;
        nearFrames = (int) Math.round(NEAR_SECONDS * sampleRateHz);
        ownFrames = (int) Math.max(3, Math.round(OWN_SECONDS * sampleRateHz));
        holeFrames = (int) Math.max(3, Math.round(HOLE_SECONDS * sampleRateHz));
        soundingFrames = (int) Math.round(STILL_SOUNDING_SECONDS * sampleRateHz);
        longestRepeat = (int) Math.round(LONGEST_REPEAT_SECONDS * sampleRateHz);
    }

    /** @param frame where the third difference is highest   @param peak how high */
    boolean isClick(long frame, double peak) {
        if (frame - nearFrames - 3L * lag < recent.firstFrame()) {
            return false;
        }
        long jump = biggestJump(frame);
        return standsAlone(jump)
            && peak > OVER_BEFORE * rms(frame - nearFrames, frame - ownFrames)
            && peak > OVER_AFTER * rms(frame + ownFrames, frame + nearFrames)
            && !isEdgeOfHole(jump) && !isSplice(jump);
    }

    private long biggestJump(long frame) {
        long best = frame;
        for (long i = frame - 3L * lag; i <= frame + lag; i++) {
            if (jump(i) > jump(best)) {
                best = i;
            }
        }
        return best;
    }

    private boolean standsAlone(long frame) {
        double most = jump(frame) / JUMP_OVER_NEIGHBOURS;
        for (int i = NEIGHBOURS_FROM * lag; i <= NEIGHBOURS_TO * lag; i++) {
            if (jump(frame - i) > most || jump(frame + i) > most) {
                return false;
            }
        }
        return true;
    }

    private double jump(long frame) {
        return Math.abs(recent.get(frame) - recent.get(frame - lag));
    }

    private double rms(long from, long to) {
        double sum = 0;
        for (long i = from; i < to; i++) {
            double d = recent.get(i) - recent.get(i - 3L * lag) + 3.0 * (recent.get(i - 2L * lag) - recent.get(i - lag));
            sum += d * d;
        }
        return Math.sqrt(sum / (to - from));
    }

    private boolean isEdgeOfHole(long frame) {
        boolean holeAfter = isConstant(frame, holeFrames) && !isConstant(frame - holeFrames - lag, holeFrames);
        boolean holeBefore = isConstant(frame - holeFrames - lag, holeFrames);
        return holeAfter || holeBefore && !isConstant(frame + soundingFrames / 2, soundingFrames / 2);
    }

    private boolean isConstant(long from, int frames) {
        float first = recent.get(from);
        for (long i = from + 1; i < from + frames; i++) {
            if (recent.get(i) != first) {
                return false;
            }
        }
        return true;
    }

    /** Whether what follows, or what came before, is exactly what was heard a little earlier: a block played twice. */
    private boolean isSplice(long frame) {
        long first = Math.max(recent.firstFrame(), frame - REPEAT_FRAMES - longestRepeat);
        return repeats(frame, first) || repeats(frame - REPEAT_FRAMES, first);
    }

    private boolean repeats(long from, long firstFrame) {
        if (isConstant(from, REPEAT_FRAMES)) {
            return false;
        }
        for (long earlier = from - REPEAT_FRAMES; earlier >= firstFrame; earlier--) {
            int same = 0;
            while (same < REPEAT_FRAMES && recent.get(earlier + same) == recent.get(from + same)) {
                same++;
            }
            if (same == REPEAT_FRAMES) {
                return true;
            }
        }
        return false;
    }
}
