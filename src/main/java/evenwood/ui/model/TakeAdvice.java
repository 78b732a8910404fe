package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.coach.Coach;
import evenwood.coach.Move;
import evenwood.coach.PeakForecast;
import evenwood.eq.RigInUse;
import evenwood.judge.MicrophoneRule;
import evenwood.judge.TargetWindow;
import evenwood.judge.ToneComparison;
import evenwood.measure.TakeReadings;
import evenwood.rig.Rig;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** What the coach says of a take, with everything that is known of the rig at that moment. Thread: any. */
final class TakeAdvice {
    /** A player's loudness differs so much from take to take though nothing was turned. */
    private static final double PLAUSIBLE_DB = 5;
    private final Supplier<Optional<RigInUse>> rig;
    private volatile List<Move> made = List.of();
    private volatile List<Move> madeLast = List.of();
    private volatile Optional<Assessment> before = Optional.empty();
    private volatile Optional<LikedTake> liked = Optional.empty();

    TakeAdvice(Supplier<Optional<RigInUse>> rig) {
        this.rig = rig;
    }

    /** What takes are to sound like from now on; empty: as such an instrument usually does. */
    void like(Optional<LikedTake> take) {
        liked = take;
    }

    Optional<LikedTake> liked() {
        return liked;
    }

    /** Something else is heard now, with nothing turned yet. */
    void begin() {
        made = List.of();
        madeLast = List.of();
        before = Optional.empty();
    }

    /** What the take before was like, when this one is the same again. */
    Optional<Assessment> before() {
        return before;
    }

    /** The same is heard again: what was said of it until now, and the moves that were made. */
    void turned(Optional<Assessment> old, List<Move> moves) {
        before = old.filter(each -> each.readings().hasPlaying());
        made = Stream.concat(made.stream(), moves.stream()).toList();
        madeLast = List.copyOf(moves);
    }

    Assessment of(TakeReadings readings, PeakForecast peak) {
        Optional<Assessment> old = before;
        Coach coach = new Coach(TargetWindow.DEFAULT, made);
        Optional<RigInUse> inUse = rig.get();
        Optional<Rig> used = inUse.map(RigInUse::rig);
        Optional<LikedTake> wanted = liked.filter(each -> readings.hasPlaying());
        Optional<ToneComparison> tone = wanted.map(each -> each.comparison(readings)).or(() -> used.flatMap(each -> ToneComparison.withInstrument(readings, each)));
        Assessment judged = coach.assess(readings, tone, inUse, peak);
        Assessment alone = wanted.map(each -> each.withMissing(judged)).orElse(judged);
        Assessment assessment = used.map(each -> alone.withMissing(MicrophoneRule.remarks(readings, each.tap(), each.instrument().lowestHz()))).orElse(alone);
        return old.isPresent() && readings.hasPlaying()
            ? coach.comparedWith(assessment, old.get().readings(), old.get().verdict().tone(), turnedDb(old.get().readings(), readings)) : assessment;
    }

    /** By how much the gain was turned since the take before, if that was said and sounds more like it than like nothing turned at all. */
    private OptionalDouble turnedDb(TakeReadings was, TakeReadings now) {
        double saidDb = MadeMoves.chain(madeLast).gainDb();
        double heardDb = was.hasPlaying() ? now.playingDbfs() - was.playingDbfs() : Double.POSITIVE_INFINITY;
        boolean sounds = Math.abs(heardDb - saidDb) < Math.max(PLAUSIBLE_DB, Math.abs(heardDb));
        return madeLast.isEmpty() || !sounds ? OptionalDouble.empty() : OptionalDouble.of(saidDb);
    }
}
