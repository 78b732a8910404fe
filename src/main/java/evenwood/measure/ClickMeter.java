package evenwood.measure;

import evenwood.sound.AudioBlock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Counts the clicks of a bad jack, cable or pot, in playing and in rests.
 *
 * <p>In: mono blocks of any size. Out: {@link ClickReading}: how many, and where the first of them are.
 * <p>How: the third difference of the sound leaves little of music and nearly all of a jump; its peak in parts of 0.67 ms
 * is compared with 60 ms on both sides, so that attacks (which go on) and the pulses of a bowed or plucked string (which
 * come again) are no clicks; {@link ClickShape} then looks at the jump itself. Source: our choice; prediction-error
 * detection after Godsill and Rayner 1998 (from memory), with a fixed predictor so that it costs little.
 * <p>Limits: told 60 ms late; a click must jump by −66 dBFS at least and stand out of what the music does within
 * milliseconds; steady crackle of more than about thirty clicks a second hides itself (ClickMeterTest).
 * <p>Thread: one owner. {@link #accept} never allocates, locks, logs, or touches files.
 */
public final class ClickMeter {
    /** So many places are kept. */
    public static final int MOST_PLACES = 64;
    private static final double PART_SECONDS = 0.000_67;
    private static final int PARTS_AROUND = 90;
    private static final int PARTS_BEFORE_AT_LEAST = 30;
    /** Its own tail, and the jump back that often follows. */
    private static final int OWN_PARTS = 3;
    private static final float OVER_OTHERS = 3;
    /** So many parts around may hold peaks like it: two other clicks. */
    private static final int MOST_LIKE_IT = 4;
    private static final int RING = 256;
    private static final double RECENT_SECONDS = 0.2;
    private static final double HIGHEST_USUAL_RATE_HZ = 48_000;
    private static final float LEAST_PEAK = (float) (2 * Math.pow(10, -66 / 20.0));

    private final int sampleRateHz;
    private final int lag;
    private final int partFrames;
    private final float[] line;
    private final int history;
    private final float[] peaks = new float[RING];
    private final long[] peakFrames = new long[RING];
    private final RecentSound recent;
    private final ClickShape shape;
    private final long[] places = new long[MOST_PLACES];
    private final long[] gaps = new long[8];
    private int gapCount;
    private int filled;
    private long parts;
    private int count;

    public ClickMeter(int sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
        lag = (int) Math.max(1, Math.round(sampleRateHz / HIGHEST_USUAL_RATE_HZ));
        partFrames = (int) Math.max(4, Math.round(PART_SECONDS * sampleRateHz));
        history = 3 * lag;
        line = new float[history + partFrames];
        recent = new RecentSound(sampleRateHz, RECENT_SECONDS);
        shape = new ClickShape(sampleRateHz, lag, recent);
    }

    /** Hears one block and keeps none of it. [audio thread] */
    public void accept(AudioBlock block) {
        int done = 0;
        while (done < block.frames()) {
            int frames = Math.min(block.frames() - done, partFrames - filled);
            System.arraycopy(block.samples(), done, line, history + filled, frames);
            recent.append(block, done, frames);
            filled += frames;
            done += frames;
            if (filled == partFrames) {
                endPart();
            }
        }
    }

    /** All clicks up to 60 ms ago. [owner's thread] */
    public ClickReading reading() {
        List<Double> first = new ArrayList<>();
        for (int i = 0; i < Math.min(count, places.length); i++) {
            first.add((double) places[i] / sampleRateHz);
        }
        return new ClickReading(count, first);
    }

    /** Sound is missing between the last block and the next: the step there is nobody's click. [audio thread] */
    public void gap() {
        gaps[gapCount++ % gaps.length] = recent.endFrame();
    }

    public void reset() {
        gapCount = 0;
        Arrays.fill(line, 0f);
        recent.reset();
        filled = 0;
        parts = 0;
        count = 0;
    }

    private void endPart() {
        float highest = 0;
        int at = 0;
        int l = lag;
        for (int i = history; i < line.length; i++) {
            float d = Math.abs(line[i] - line[i - 3 * l] + 3 * (line[i - 2 * l] - line[i - l]));
            if (d > highest) {
                highest = d;
                at = i;
            }
        }
        int slot = (int) (parts & (RING - 1));
        peaks[slot] = highest;
        peakFrames[slot] = recent.endFrame() - (line.length - at);
        System.arraycopy(line, partFrames, line, 0, history);
        filled = 0;
        parts++;
        long judged = parts - 1 - PARTS_AROUND;
        if (judged >= PARTS_BEFORE_AT_LEAST && peaks[(int) (judged & (RING - 1))] >= LEAST_PEAK) {
            judge(judged);
        }
    }

    private void judge(long part) {
        float peak = peaks[(int) (part & (RING - 1))];
        int likeIt = 0;
        for (long other = Math.max(0, part - PARTS_AROUND); other <= part + PARTS_AROUND; other++) {
            float height = peaks[(int) (other & (RING - 1))];
            if (Math.abs(other - part) > OWN_PARTS) {
                likeIt += height * OVER_OTHERS > peak ? 1 : 0;
            } else if (height > peak || height == peak && other < part) {
                return;
            }
            if (likeIt > MOST_LIKE_IT) {
                return;
            }
        }
        long frame = peakFrames[(int) (part & (RING - 1))];
        if (!isAtGap(frame) && shape.isClick(frame, peak)) {
            if (count < places.length) {
                places[count] = frame;
            }
            count++;
        }
    }

    private boolean isAtGap(long frame) {
        for (int i = 0; i < Math.min(gapCount, gaps.length); i++) {
            if (Math.abs(frame - gaps[i]) <= 4L * lag) {
                return true;
            }
        }
        return false;
    }
}
