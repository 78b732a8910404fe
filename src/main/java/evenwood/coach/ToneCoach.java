package evenwood.coach;

import evenwood.eq.RigInUse;
import evenwood.eq.Solution;
import evenwood.eq.Solver;
import evenwood.eq.Turn;
import evenwood.judge.BandHz;
import evenwood.judge.Fault;
import evenwood.judge.Finding;
import evenwood.judge.NarrowCut;
import evenwood.judge.RoomBass;
import evenwood.judge.Statement;
import evenwood.judge.ToneComparison;
import evenwood.judge.Verdict;
import evenwood.measure.BandLevel;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import evenwood.rig.Control;
import evenwood.rig.Setting;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which tone controls to turn so that what was found about the tone is put right.
 *
 * <p>How: the {@link Solver} on the whole difference; each of its turns answers the finding whose region it helps most.
 * Without a tone finding nothing is turned, however much the spectrum differs: a different player is no fault. A single note that
 * jumps out gets its own narrow cut ({@link NarrowMove}); the controls of most rigs are too wide for it. Against an
 * instrument's usual tone the tolerance already holds how much instruments differ, so there only what is uncertain about this
 * take counts as uncertainty.
 */
final class ToneCoach {
    private static final Set<Fault> TONE = EnumSet.of(Fault.BOOMY, Fault.BOXY, Fault.NASAL, Fault.HARSH, Fault.THIN, Fault.DULL);
    /** What is less likely is said, but nothing is turned for it. */
    private static final double TURNS_FROM_PROBABILITY = 0.4;
    /** What register, key and dynamics leave of a difference, 95 %. */
    private static final double PLAYING_HALF_WIDTH_DB = 1.96 * ToneComparison.PLAYING_DEVIATION_DB;
    /** A turn that takes less than this share of its size off where the fault lies works on the rest. */
    private static final double DIRECTLY = 0.2;
    /** A finding about less than a third of an octave is about one note. */
    private static final double NARROWEST_REGION = Math.pow(2, 1.0 / 3);

    /**
     * One turn with the finding it answers.
     *
     * @param directly whether it moves the finding's own region that way; else it brings the rest into proportion
     */
    record Answer(Turn turn, Finding finding, boolean directly) { }

    /**
     * @param solution what was solved
     * @param answers  its turns, most useful first
     * @param missing  what cannot be reached, in words
     */
    record Advice(Solution solution, List<Answer> answers, List<Statement> missing) {
        /** Of the rig, those that are turned. */
        Set<Control> controls() {
            return solution.turns().stream().flatMap(turn -> turn.from().stream()).map(Setting::control).collect(Collectors.toSet());
        }
    }

    private ToneCoach() { }

    static List<Finding> toneFindings(Verdict verdict) {
        return verdict.findings().stream().filter(finding -> TONE.contains(finding.fault()) && finding.bandHz().isPresent()
            && finding.probability() >= TURNS_FROM_PROBABILITY).toList();
    }

    /** What the room makes no tone control puts right. */
    private static Stream<Finding> notTheRooms(Verdict verdict, Optional<RoomBass> room) {
        return toneFindings(verdict).stream().filter(finding -> room.isEmpty() || !room.get().explains(finding));
    }

    static Optional<Advice> advise(TakeReadings readings, Verdict verdict, Optional<RigInUse> rig, Optional<RoomBass> room, int mostTurns) {
        List<Finding> findings = notTheRooms(verdict, room).filter(finding -> !isOfOneNote(finding)).toList();
        if (findings.isEmpty() || verdict.tone().isEmpty() || mostTurns < 1) {
            return Optional.empty();
        }
        ToneDifference whole = forSolver(verdict.tone().get(), readings);
        ToneDifference heard = room.map(each -> each.withoutBass(whole, verdict.tone().get().lowestNoteHz())).orElse(whole);
        Solver solver = new Solver(readings.take().format().sampleRateHz());
        Solution solution = rig.map(each -> solver.solve(heard, each.rig().settings(), each.laws(), mostTurns))
            .orElseGet(() -> solver.solve(heard, mostTurns));
        List<Answer> answers = solution.turns().stream().map(turn -> answer(turn, findings, solution.before())).toList();
        return Optional.of(new Advice(solution, answers, unreached(solution, findings)));
    }

    /** The cut against a note that was found to jump out; controls for whole regions would do more harm than good there. */
    static Optional<NarrowCut> narrowCut(TakeReadings readings, Verdict verdict, Optional<RoomBass> room) {
        List<Finding> ofOneNote = notTheRooms(verdict, room).filter(ToneCoach::isOfOneNote).toList();
        return ofOneNote.isEmpty() ? Optional.empty() : NarrowCut.of(readings).stream().filter(cut -> ofOneNote.stream()
            .anyMatch(finding -> finding.bandHz().orElseThrow().lowHz() < cut.frequencyHz() && cut.frequencyHz() < finding.bandHz().orElseThrow().highHz()))
            .findFirst();
    }

    private static boolean isOfOneNote(Finding finding) {
        BandHz where = finding.bandHz().orElseThrow();
        return where.highHz() < NARROWEST_REGION * where.lowHz();
    }

    private static ToneDifference forSolver(ToneComparison tone, TakeReadings readings) {
        if (tone.against() != ToneComparison.Against.INSTRUMENT) {
            return tone.difference();
        }
        Map<ThirdOctave, BandLevel> levels = readings.spectrum().bands().stream().collect(Collectors.toMap(BandLevel::band, level -> level));
        return new ToneDifference(tone.difference().bands().stream().map(band -> new ToneDifference.Band(band.band(), band.differenceDb(),
            Math.min(band.uncertaintyDb(), Math.hypot(levels.get(band.band()).relativeHalfWidthDb(), PLAYING_HALF_WIDTH_DB)),
            band.toleranceDb(), band.weight())).toList());
    }

    /** The finding in whose region the turn takes most off the difference. */
    private static Answer answer(Turn turn, List<Finding> findings, ToneDifference before) {
        Finding finding = findings.stream().max(Comparator.comparingDouble((Finding each) -> helped(turn, each.bandHz().orElseThrow(), before))).orElseThrow();
        return new Answer(turn, finding, helped(turn, finding.bandHz().orElseThrow(), before) > DIRECTLY * turn.figures().sizeDb());
    }

    private static double helped(Turn turn, BandHz region, ToneDifference before) {
        double helped = 0;
        for (int i = 0; i < before.bands().size(); i++) {
            ToneDifference.Band band = before.bands().get(i);
            if (band.centreHz() >= region.lowHz() && band.centreHz() <= region.highHz()) {
                helped -= Math.signum(band.differenceDb()) * turn.figures().effectDb().get(i);
            }
        }
        return helped;
    }

    private static List<Statement> unreached(Solution solution, List<Finding> findings) {
        List<Statement> missing = new ArrayList<>();
        for (Finding finding : findings) {
            BandHz region = finding.bandHz().orElseThrow();
            solution.unreached().stream().filter(band -> band.centreHz() >= region.lowHz() && band.centreHz() <= region.highHz())
                .max(Comparator.comparingDouble(band -> Math.abs(band.differenceDb())))
                .ifPresent(band -> missing.add(Statement.of(band.differenceDb() > 0 ? "missing.reach-too-much" : "missing.reach-too-little",
                    Math.abs(band.differenceDb()), band.band().nominalHz())));
        }
        return missing;
    }
}
