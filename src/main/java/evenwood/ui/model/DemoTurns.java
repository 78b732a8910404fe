package evenwood.ui.model;

import evenwood.coach.GuidedCheck;
import evenwood.coach.Move;
import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.eq.EqProcessor;
import evenwood.judge.Fault;
import evenwood.sound.DemoFault;
import evenwood.sound.DemoPerformer;
import evenwood.sound.DemoScenario;
import evenwood.sound.SoundSource;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What the demo's invented player is asked for, and what was turned on the demo so far.
 *
 * <p>Thread: the screen turns and asks; any opens the demo as it stands.
 */
final class DemoTurns {
    private final double pace;
    private volatile PlayedDemo.Part part = PlayedDemo.Part.ALL;
    private volatile EqChain turned = EqChain.FLAT;
    private volatile Set<Fault> cured = Set.of();

    /** @param pace how many times faster than played it comes; 1 for people */
    DemoTurns(double pace) {
        this.pace = pace;
    }

    /** From now on it stands so, with no move made yet. */
    void stand(EqChain controls) {
        turned = controls;
        cured = Set.of();
    }

    /** Empty lets it play all there is, once. */
    void ask(Optional<GuidedCheck.Step> step) {
        part = step.map(each -> switch (each) {
            case QUIET -> PlayedDemo.Part.QUIET;
            case SOFT -> PlayedDemo.Part.SOFT;
            case HARD -> PlayedDemo.Part.HARD;
            case PLAY, DONE -> PlayedDemo.Part.TUNE;
        }).orElse(PlayedDemo.Part.ALL);
    }

    /** What the player would have turned: a gain in front of the preamp frees it, everything else is heard as it is. */
    void make(List<Move> moves) {
        Set<Fault> mended = EnumSet.noneOf(Fault.class);
        mended.addAll(cured);
        moves.forEach(move -> mended.add(move.fault()));
        cured = mended;
        EqChain more = MadeMoves.chain(moves);
        EqChain all = turned.withGainDb(turned.gainDb() + more.gainDb());
        for (EqFilter filter : more.filters()) {
            all = all.then(filter);
        }
        turned = all;
    }

    /** As if it were played now. */
    PlayedDemo live() {
        return new PlayedDemo(scenario(), turned, pace, () -> part);
    }

    /** The whole of it, as fast as it can be read. */
    SoundSource recorded() {
        return new ThroughSource(new DemoPerformer(PlayedDemo.SAMPLE_RATE_HZ, PlayedDemo.SEED, scenario()), new EqProcessor(turned, PlayedDemo.SAMPLE_RATE_HZ)::process,
            () -> false);
    }

    private DemoScenario scenario() {
        DemoScenario kitchen = DemoScenario.kitchen();
        return cured.contains(Fault.OVERDRIVEN) ? kitchen.without(DemoFault.PREAMP_OVERDRIVE) : kitchen;
    }
}
