package evenwood.coach;

import evenwood.eq.EqChain;
import evenwood.eq.RigInUse;
import evenwood.judge.Fault;
import evenwood.judge.Finding;
import evenwood.judge.Judge;
import evenwood.judge.RoomBass;
import evenwood.judge.Severity;
import evenwood.judge.TargetWindow;
import evenwood.judge.ToneComparison;
import evenwood.judge.Verdict;
import evenwood.measure.TakeReadings;
import evenwood.wiring.ChainAnalysis;
import evenwood.wiring.ChainReport;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import java.util.Set;
import java.util.stream.Stream;
import java.util.stream.Collectors;

/**
 * Judges a take and answers its findings with at most {@value #MOST_MOVES} moves. Same readings, same answer.
 *
 * <p>Order: what distorts first, because nothing else can be judged before; then by how much the fault matters; among equals
 * level before tone, and of tone what helps most.
 */
public final class Coach {
    static final int MOST_MOVES = 3;

    private final TargetWindow window;
    private final Set<Move.Control> freed;

    public Coach(TargetWindow window) {
        this(window, List.of());
    }

    /** @param made what was turned in the takes before this one: what freed an overloaded stage is not turned back */
    public Coach(TargetWindow window, List<Move> made) {
        this.window = window;
        freed = made.stream().filter(move -> move.fault() == Fault.OVERDRIVEN && move.changeDb().orElse(0) < 0).map(Move::control).collect(Collectors.toSet());
    }

    /** Without a wanted tone. */
    public Assessment assess(TakeReadings readings) {
        return assess(readings, Optional.empty());
    }

    /** For plain gains and a plain equaliser. */
    public Assessment assess(TakeReadings readings, Optional<ToneComparison> tone) {
        return assess(readings, tone, Optional.empty(), PeakForecast.fromSpectrum(readings));
    }

    /**
     * @param tone what the tone should be, if that is known
     * @param rig  the player's own controls, if they are known
     * @param peak how high the peaks get behind an equaliser; asked only when there is something to equalise
     */
    public Assessment assess(TakeReadings readings, Optional<ToneComparison> tone, Optional<RigInUse> rig, PeakForecast peak) {
        Optional<ChainReport> chain = rig.flatMap(each -> each.rig().connection().map(connection -> ChainAnalysis.of(connection, each.rig().instrument().lowestHz())));
        Verdict verdict = new Judge(windowOf(rig)).judge(readings, tone, chain, room(readings, tone, rig));
        int room = MOST_MOVES - movesBeforeTone(readings, verdict, rig);
        Answer answer = answer(readings, verdict, rig, peak, room);
        while (room > 0 && !answer.complete()) {
            room--; // the equaliser lifts the peaks so far that one more gain must come down before the tone
            answer = answer(readings, verdict, rig, peak, room);
        }
        return answer.assessment;
    }

    /**
     * Was it better? The same assessment with every fault held against the take before.
     *
     * @param toneBefore  the tone of the take before beside the same wanted one
     * @param knownGainDb by how much the gain was turned in between, if that is known
     */
    public Assessment comparedWith(Assessment now, TakeReadings before, Optional<ToneComparison> toneBefore, OptionalDouble knownGainDb) {
        return now.with(TakeComparer.compare(before, new Judge(window).judge(before, toneBefore), now.readings(), now.verdict(), knownGainDb));
    }

    /** @param tones how many moves of tone were found; all of them must have found room */
    private record Answer(Assessment assessment, int tones) {
        boolean complete() {
            return assessment.moves().stream().filter(move -> !isLevel(move) && move.kind() != Move.Kind.WIRING).count() == tones;
        }
    }

    private Answer answer(TakeReadings readings, Verdict verdict, Optional<RigInUse> rig, PeakForecast peak, int mostTurns) {
        Optional<RoomBass> room = room(readings, verdict.tone(), rig);
        Optional<ToneCoach.Advice> advice = ToneCoach.advise(readings, verdict, rig, room, mostTurns);
        EqChain tone = advice.map(each -> each.solution().change()).orElse(EqChain.FLAT);
        int turns = advice.map(each -> each.answers().size()).orElse(0);
        Optional<NarrowMove> narrow = turns >= mostTurns ? Optional.empty() : ToneCoach.narrowCut(readings, verdict, room)
            .flatMap(cut -> NarrowMove.of(cut, rig, advice.map(ToneCoach.Advice::controls).orElse(Set.of()), readings.take().format().sampleRateHz()));
        EqChain eq = narrow.map(each -> tone.then(each.change())).orElse(tone);
        double peakNow = readings.truePeak().truePeakDbtp();
        PeakAfter equalised = eq.equals(EqChain.FLAT) ? new PeakAfter(peakNow, 0) : peak.after(eq);
        GainCoach.Advice gain = GainCoach.advise(readings, verdict, windowOf(rig), rig, freed, eq.equals(EqChain.FLAT) ? 0 : equalised.truePeakDbtp() - peakNow);
        List<Move> tones = new ArrayList<>();
        advice.ifPresent(each -> each.answers().forEach(turn -> tones.add(EqMoves.move(turn))));
        narrow.ifPresent(each -> tones.add(each.move()));
        List<Move> moves = inOrder(gain.moves(), WiringCoach.moves(verdict), Stream.concat(PlacementCoach.moves(verdict, room).stream(), tones.stream()).toList(), verdict);
        double gainDb = moves.stream().filter(Coach::isLevel).mapToDouble(move -> move.changeDb().orElse(0)).sum();
        Optional<Prediction> prediction = moves.isEmpty() ? Optional.empty() : Optional.of(new Prediction(
            advice.map(each -> each.solution().predicted()).or(() -> verdict.tone().map(ToneComparison::difference)),
            equalised.plus(gainDb), eq.withGainDb(eq.gainDb() + gainDb)));
        return new Answer(new Assessment(readings, verdict, moves, prediction, Optional.empty())
            .withMissing(gain.missing()).withMissing(advice.map(ToneCoach.Advice::missing).orElse(List.of())), tones.size());
    }

    /** Bass that the room makes; against another take the room is in both. */
    private static Optional<RoomBass> room(TakeReadings readings, Optional<ToneComparison> tone, Optional<RigInUse> rig) {
        boolean besideTake = tone.isPresent() && tone.get().against() == ToneComparison.Against.TAKE;
        return besideTake ? Optional.empty() : rig.flatMap(each -> RoomBass.of(readings, each.rig().tap(), each.rig().instrument().lowestHz()));
    }

    /** With what sweeps told of how loud the rig stays clean. */
    private TargetWindow windowOf(Optional<RigInUse> rig) {
        return rig.map(each -> window.cleanUpTo(each.cleanUpToDbfs())).orElse(window);
    }

    /** How many moves must come before any move of tone, so that no more of those are sought than there is room for. */
    private int movesBeforeTone(TakeReadings readings, Verdict verdict, Optional<RigInUse> rig) {
        Severity tone = ToneCoach.toneFindings(verdict).stream().map(Finding::severity).max(Severity::compareTo).orElse(Severity.SLIGHT);
        return WiringCoach.moves(verdict).size() + PlacementCoach.moves(verdict, room(readings, verdict.tone(), rig)).size() + (int) GainCoach.advise(readings, verdict, windowOf(rig), rig, freed, 0).moves().stream()
            .filter(move -> isDistortion(move) || severity(move, verdict).compareTo(tone) >= 0).count();
    }

    private static List<Move> inOrder(List<Move> gains, List<Move> wiring, List<Move> eq, Verdict verdict) {
        List<Move> all = new ArrayList<>(gains);
        all.addAll(eq);
        // A stable sort: moves that must follow each other stay in their order.
        all.sort((a, b) -> isDistortion(a) != isDistortion(b) ? (isDistortion(a) ? -1 : 1)
            : severity(b, verdict).compareTo(severity(a, verdict)));
        all.addAll(0, wiring); // no gain and no equaliser brings back what the wiring takes
        List<Move> numbered = new ArrayList<>();
        for (Move move : all.subList(0, Math.min(MOST_MOVES, all.size()))) {
            numbered.add(move.withOrder(numbered.size() + 1));
        }
        return numbered;
    }

    private static boolean isDistortion(Move move) {
        return move.fault() == Fault.CLIPPING || move.fault() == Fault.OVERDRIVEN;
    }

    private static boolean isLevel(Move move) {
        return move.kind() == Move.Kind.GAIN || move.kind() == Move.Kind.VOLUME;
    }

    private static Severity severity(Move move, Verdict verdict) {
        return verdict.findings().stream().filter(finding -> finding.fault() == move.fault()).map(Finding::severity).findFirst()
            .orElse(Severity.SLIGHT);
    }
}
