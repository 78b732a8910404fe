package evenwood.live;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;

/**
 * What was lost so far: the sum of all, and the latest ones by name, so that eight hours with a loose plug do not grow.
 *
 * <p>Thread: any; never waits. Losses are rare, so an immutable picture a loss is cheap.
 */
final class GapLog {
    static final int KEPT = 100;

    record Picture(long lostFrames, List<LiveGap> latest) { }

    private final AtomicReference<Picture> picture = new AtomicReference<>(new Picture(0, List.of()));

    void add(LiveGap gap) {
        picture.updateAndGet(before -> with(before, gap));
    }

    Picture picture() {
        return picture.get();
    }

    /** The picture as it would be with one more, not kept: for a gap that is still open. */
    static Picture with(Picture before, LiveGap gap) {
        List<LiveGap> gaps = new ArrayList<>(before.latest());
        gaps.add(gap);
        List<LiveGap> latest = gaps.size() > KEPT ? gaps.subList(gaps.size() - KEPT, gaps.size()) : gaps;
        return new Picture(before.lostFrames() + gap.lostFrames(), List.copyOf(latest));
    }
}
