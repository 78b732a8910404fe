package evenwood.measure;

import evenwood.measure.Dropout.Kind;
import evenwood.sound.AudioBlock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Finds holes in the sound: zeros, a held sample, or a block played twice, from half a millisecond to half a second.
 *
 * <p>In: mono blocks of any size. Out: {@link DropoutReading}: how many, and the first of them.
 * <p>How: runs of equal samples are counted; repeats are found by looking up pairs of samples, about one in eight, in a
 * table of where such a pair was last heard, and following the match. {@link DropoutShape} then asks whether the sound
 * was alive right up to both edges. Digital silence between notes, clipped tops and periodic test tones are none.
 * Source: our choice.
 * <p>Limits: needs sound over −66 dBFS on both sides; told 5 ms late (DropoutMeterTest).
 * <p>Thread: one owner. {@link #accept} never allocates, locks, logs, or touches files.
 */
public final class DropoutMeter {
    /** So many places are kept. */
    public static final int MOST_PLACES = 64;
    private static final double SHORTEST_SECONDS = 0.000_5;
    private static final double LONGEST_SECONDS = 0.5;
    private static final double LONGEST_LAG_SECONDS = 0.1;
    private static final double RECENT_SECONDS = 0.65;
    private static final int CHUNK = 512;
    private static final int TABLE = 1 << 13;
    private static final int HASH = 0x9E37_79B1;
    private static final int PENDING = 32;

    private final int sampleRateHz;
    private final int shortestFrames;
    private final int longestFrames;
    private final int longestLag;
    private final RecentSound recent;
    private final DropoutShape shape;
    private final long[] lastHeard = new long[TABLE];
    private final long[] pendingStart = new long[PENDING];
    private final long[] pendingEnd = new long[PENDING];
    private final int[] pendingLag = new int[PENDING];
    private final Kind[] kinds = new Kind[MOST_PLACES];
    private final long[] starts = new long[MOST_PLACES];
    private final int[] lengths = new int[MOST_PLACES];
    private int pending;
    private float previous = Float.NaN;
    private long runStart;
    private int lag;
    private long matchStart;
    private int count;

    public DropoutMeter(int sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
        shortestFrames = (int) Math.max(4, Math.round(SHORTEST_SECONDS * sampleRateHz));
        longestFrames = (int) Math.round(LONGEST_SECONDS * sampleRateHz);
        longestLag = (int) Math.round(LONGEST_LAG_SECONDS * sampleRateHz);
        recent = new RecentSound(sampleRateHz, RECENT_SECONDS);
        shape = new DropoutShape(sampleRateHz, recent);
        reset();
    }

    /** Hears one block and keeps none of it. [audio thread] */
    public void accept(AudioBlock block) {
        float[] in = block.samples();
        for (int done = 0; done < block.frames(); done += CHUNK) {
            int frames = Math.min(CHUNK, block.frames() - done);
            long start = recent.endFrame();
            recent.append(block, done, frames);
            scan(in, done, frames, start);
            judgePending();
        }
    }

    /** All holes that ended up to 5 ms ago. [owner's thread] */
    public DropoutReading reading() {
        return new DropoutReading(count, places().stream().map(hole -> (double) hole.startFrame() / sampleRateHz).toList());
    }

    List<Dropout> places() {
        List<Dropout> places = new ArrayList<>();
        for (int i = 0; i < Math.min(count, kinds.length); i++) {
            places.add(new Dropout(kinds[i], starts[i], lengths[i]));
        }
        return places;
    }

    /** Sound is missing between the last block and the next: what is cut there is counted elsewhere. [audio thread] */
    public void gap() {
        previous = Float.NaN;
        runStart = Long.MAX_VALUE / 2;
        lag = 0;
    }

    public void reset() {
        recent.reset();
        Arrays.fill(lastHeard, Long.MIN_VALUE / 2);
        pending = 0;
        previous = Float.NaN;
        runStart = 0;
        lag = 0;
        count = 0;
    }

    private void scan(float[] in, int from, int frames, long startFrame) {
        float before = previous;
        for (int i = 0; i < frames; i++) {
            float x = in[from + i];
            if (x != before) {
                long frame = startFrame + i;
                if (frame - runStart >= shortestFrames) {
                    addPending(runStart, frame, 0);
                }
                runStart = frame;
                if (Float.floatToRawIntBits(x) * HASH >>> 29 == 0 && lag == 0) {
                    lookUp(frame, before, x);
                }
            }
            if (lag > 0 && x != recent.get(startFrame + i - lag)) {
                endMatch(startFrame + i);
            }
            before = x;
        }
        previous = before;
    }

    private void lookUp(long frame, float before, float x) {
        int bits = Float.floatToRawIntBits(x) * HASH ^ Float.floatToRawIntBits(before) * 31;
        int slot = (bits ^ bits >>> 15) & TABLE - 1;
        long earlier = lastHeard[slot];
        lastHeard[slot] = frame;
        if (frame - earlier <= longestLag && recent.get(earlier) == x && recent.get(earlier - 1) == before) {
            lag = (int) (frame - earlier);
            matchStart = frame - 1;
        }
    }

    private void endMatch(long frame) {
        int reach = 0;
        while (reach < longestLag && matchStart - 1 - lag > recent.firstFrame()
            && recent.get(matchStart - 1) == recent.get(matchStart - 1 - lag)) {
            matchStart--;
            reach++;
        }
        if (frame - matchStart >= shortestFrames) {
            addPending(matchStart, frame, lag);
        }
        lag = 0;
    }

    private void addPending(long start, long end, int repeatLag) {
        if (end - start <= longestFrames && pending < PENDING) {
            pendingStart[pending] = start;
            pendingEnd[pending] = end;
            pendingLag[pending] = repeatLag;
            pending++;
        }
    }

    private void judgePending() {
        int kept = 0;
        for (int i = 0; i < pending; i++) {
            if (recent.endFrame() < pendingEnd[i] + shape.framesNeededAfter()) {
                pendingStart[kept] = pendingStart[i];
                pendingEnd[kept] = pendingEnd[i];
                pendingLag[kept++] = pendingLag[i];
            } else if (pendingLag[i] > 0) {
                judgeRepeat(pendingStart[i], pendingEnd[i]);
            } else {
                judgeRun(pendingStart[i], pendingEnd[i]);
            }
        }
        pending = kept;
    }

    private void judgeRun(long start, long end) {
        if (shape.isHole(start, end)) {
            boolean zeros = recent.get(start) == 0;
            long from = zeros ? start : start + 1;
            add(zeros ? Kind.ZEROS : Kind.HELD_SAMPLE, from, (int) (end - from));
        }
    }

    private void judgeRepeat(long start, long end) {
        if (shape.isRepeat(start, end)) {
            add(Kind.REPEATED_BLOCK, start, (int) (end - start));
        }
    }

    private void add(Kind kind, long start, int frames) {
        if (count < kinds.length) {
            kinds[count] = kind;
            starts[count] = start;
            lengths[count] = frames;
        }
        count++;
    }
}
