package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.coach.Coach;
import evenwood.coach.GuidedCheck;
import evenwood.coach.Move;
import evenwood.coach.PeakAfter;
import evenwood.coach.PeakForecast;
import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.eq.EqualisedTake;
import evenwood.eq.RigInUse;
import evenwood.judge.Fault;
import evenwood.judge.Finding;
import evenwood.judge.TargetWindow;
import evenwood.judge.ToneComparison;
import evenwood.live.Listening;
import evenwood.live.LivePicture;
import evenwood.live.LiveState;
import evenwood.live.WholeTake;
import evenwood.measure.TakeReadings;
import evenwood.rig.Rig;
import evenwood.sound.DemoFault;
import evenwood.sound.DemoPerformer;
import evenwood.sound.DemoScenario;
import evenwood.sound.LiveInputs;
import evenwood.sound.SoundFiles;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * The take the window is about: starts it, keeps the newest of it, and has the coach look at it.
 *
 * <p>Thread: the screen calls; one thread of its own does what takes long, one job after the other, and publishes one immutable
 * {@link Now} after another. Nothing here waits for the screen.
 */
public final class CurrentTake implements AutoCloseable {
    private static final long LOOK_EVERY_MS = 50;
    private static final Logger LOG = Logger.getLogger(CurrentTake.class.getName());

    private final Supplier<Optional<Rig>> rig;
    private final double demoPace;
    private final ScheduledExecutorService work = Executors.newSingleThreadScheduledExecutor(job -> {
        Thread thread = new Thread(job, "evenwood-window-work");
        thread.setDaemon(true);
        return thread;
    });
    private final StripHistory strip = new StripHistory();
    private final KeptSound kept = new KeptSound();
    private volatile Now now = Now.NOTHING;
    private volatile int job;
    private volatile Optional<Assessment> before = Optional.empty();
    private volatile PlayedDemo.Part demoPart = PlayedDemo.Part.ALL;
    private volatile EqChain demoMoves = EqChain.FLAT;
    private volatile Set<Fault> demoCured = Set.of();
    // Of the work thread only:
    private Listening listening;
    private long lookedNumber;
    private TakeReadings assessed;

    public CurrentTake(Supplier<Optional<Rig>> rig) {
        this(rig, 1);
    }

    /** @param demoPace how many times faster than played the demo comes; 1 for people */
    public CurrentTake(Supplier<Optional<Rig>> rig, double demoPace) {
        this.rig = rig;
        this.demoPace = demoPace;
        work.scheduleWithFixedDelay(this::look, LOOK_EVERY_MS, LOOK_EVERY_MS, TimeUnit.MILLISECONDS);
    }

    /** The newest; never waits. */
    public Now now() {
        return now;
    }

    public StripHistory strip() {
        return strip;
    }

    /** Leaves what was heard and turns to something else, with no move made yet. */
    public void start(SoundChoice choice) {
        before = Optional.empty();
        demoMoves = EqChain.FLAT;
        demoCured = Set.of();
        begin(choice);
    }

    /** What the take before was like, when this one is the same again; empty otherwise. */
    public Optional<Assessment> before() {
        return before;
    }

    private void begin(SoundChoice choice) {
        int mine = ++job;
        publish(new Now(0, Optional.of(choice), Optional.empty(), Optional.empty(), Optional.empty(), choice.isLive() ? -1 : 0, ""));
        work.execute(() -> {
            endListening();
            strip.clear();
            kept.clear();
            try {
                if (choice.isLive()) {
                    listen(choice);
                } else {
                    check(choice, mine);
                }
            } catch (SoundProblem problem) {
                fail(problem.getMessage());
            } catch (RuntimeException | LinkageError mistake) {
                LOG.log(Level.SEVERE, "starting a take", mistake);
                fail(String.valueOf(mistake.getMessage()));
            }
        });
    }

    /**
     * The same again from its beginning, with the first so many moves made: a live input is heard anew, the demo is played with
     * them. What was said until now is what the next take is compared with.
     */
    public void again(int movesMade) {
        Now old = now;
        old.choice().ifPresent(choice -> {
            before = old.assessment().filter(each -> each.readings().hasPlaying());
            old.assessment().ifPresent(assessment -> makeDemoMoves(assessment.moves().subList(0, Math.min(movesMade, assessment.moves().size()))));
            begin(choice);
        });
    }

    /** What the demo's invented player is asked for; empty lets it play all there is, once. */
    public void askDemo(Optional<GuidedCheck.Step> step) {
        demoPart = step.map(each -> switch (each) {
            case QUIET -> PlayedDemo.Part.QUIET;
            case SOFT -> PlayedDemo.Part.SOFT;
            case HARD -> PlayedDemo.Part.HARD;
            case PLAY, DONE -> PlayedDemo.Part.TUNE;
        }).orElse(PlayedDemo.Part.ALL);
    }

    /** Ends a check under way; what was measured until then is shown. */
    public void cancel() {
        job++;
    }

    /** Ends a live take and keeps what it measured. */
    public void stop() {
        work.execute(this::endListening);
    }

    /** The coach looks again, because the rig is another. */
    public void judgeAgain() {
        work.execute(() -> {
            assessed = null;
            Now old = now;
            if (listening == null && old.readings().isPresent()) {
                publish(new Now(0, old.choice(), old.readings(), Optional.of(assess(old.readings().get(), old.choice().orElseThrow())), old.state(),
                    -1, old.problem()));
            }
        });
    }

    /** Opens what was heard once more, for the ears; empty when nothing of it was kept. */
    public Optional<SoundSource> soundAgain() {
        Optional<SoundChoice> choice = now.choice();
        return choice.isEmpty() ? Optional.empty() : choice.get() instanceof SoundChoice.Live ? kept.source() : Optional.of(open(choice.get()));
    }

    @Override
    public void close() {
        job++;
        work.execute(this::endListening);
        work.shutdown();
    }

    private void listen(SoundChoice choice) {
        Supplier<? extends SoundSource> opener = choice instanceof SoundChoice.Live live
            ? LiveInputs.opener(LiveInputs.choose(live.inputName().isEmpty() ? null : live.inputName()), live.channel())
            : () -> new PlayedDemo(demoScenario(), demoMoves, demoPace, () -> demoPart);
        SoundSource source = opener.get();
        kept.begin(source.format());
        listening = Listening.start(source, opener, kept);
        lookedNumber = -1;
        assessed = null;
    }

    private void check(SoundChoice choice, int mine) {
        try (SoundSource source = new TracedSource(open(choice), strip, () -> job != mine)) {
            WholeTake whole = WholeTake.measure(source, done -> progress(choice, done));
            Optional<Assessment> assessment = Optional.of(assess(whole.readings(), choice));
            publish(new Now(0, Optional.of(choice), Optional.of(whole.readings()), assessment, Optional.empty(), -1,
                whole.failure().map(SoundProblem::getMessage).orElse("")));
        }
    }

    private SoundSource open(SoundChoice choice) {
        return choice instanceof SoundChoice.Recording recording ? SoundFiles.open(recording.file(), recording.channel())
            : new MovedSource(new DemoPerformer(PlayedDemo.SAMPLE_RATE_HZ, PlayedDemo.SEED, demoScenario()), demoMoves);
    }

    private void progress(SoundChoice choice, OptionalDouble done) {
        publish(new Now(0, Optional.of(choice), Optional.empty(), Optional.empty(), Optional.empty(), done.orElse(0), ""));
    }

    /** Called again and again: is there anything new of a live take? */
    private void look() {
        try {
            if (listening == null) {
                return;
            }
            LivePicture picture = listening.picture();
            boolean changed = picture.number() != lookedNumber || now.state().isEmpty() || !now.state().get().equals(picture.state());
            if (!changed) {
                return;
            }
            lookedNumber = picture.number();
            boolean over = picture.state().phase() == LiveState.Phase.STOPPED;
            if (over) {
                picture = listening.stop();
                listening = null;
            }
            show(picture, over);
        } catch (RuntimeException mistake) {
            LOG.log(Level.SEVERE, "looking at the live take", mistake);
            fail(String.valueOf(mistake.getMessage()));
        }
    }

    private void show(LivePicture picture, boolean over) {
        TakeReadings readings = picture.readings();
        SoundChoice choice = now.choice().orElseThrow();
        Optional<Assessment> assessment = now.assessment();
        boolean fresh = over || assessed == null || assessed.activity() != readings.activity();
        publishLive(picture, assessment);
        if (fresh) {
            assessed = readings;
            publishLive(picture, Optional.of(assess(readings, choice)));
        }
    }

    private void publishLive(LivePicture picture, Optional<Assessment> assessment) {
        TakeReadings readings = picture.readings();
        Set<Fault> faults = EnumSet.noneOf(Fault.class);
        assessment.ifPresent(each -> each.verdict().findings().stream().map(Finding::fault).forEach(faults::add));
        strip.add(readings.take().durationSeconds(), readings.now().peakDbtp(), readings.loudness().momentaryLufs(), faults);
        publish(new Now(0, now.choice(), Optional.of(readings), assessment, Optional.of(picture.state()), -1, ""));
    }

    private Assessment assess(TakeReadings readings, SoundChoice choice) {
        Optional<Rig> used = rig.get();
        Optional<ToneComparison> tone = used.flatMap(each -> ToneComparison.withInstrument(readings, each));
        PeakForecast peak = choice.isLive() ? PeakForecast.fromSpectrum(readings) : change -> peakAfter(change, choice);
        Coach coach = new Coach(TargetWindow.DEFAULT);
        Assessment assessment = coach.assess(readings, tone, used.map(RigInUse::nominal), peak);
        Optional<Assessment> old = before;
        return old.isPresent() && readings.hasPlaying()
            ? coach.comparedWith(assessment, old.get().readings(), old.get().verdict().tone(), OptionalDouble.empty()) : assessment;
    }

    private PeakAfter peakAfter(EqChain change, SoundChoice choice) {
        try (SoundSource source = open(choice)) {
            return new PeakAfter(EqualisedTake.measure(source, change).truePeakDbtp(), 0);
        }
    }

    private DemoScenario demoScenario() {
        DemoScenario kitchen = DemoScenario.kitchen();
        return demoCured.contains(Fault.OVERDRIVEN) ? kitchen.without(DemoFault.PREAMP_OVERDRIVE) : kitchen;
    }

    /** What the player would have turned: a gain in front of the preamp frees it, everything else is heard as it is. */
    private void makeDemoMoves(List<Move> moves) {
        Set<Fault> cured = EnumSet.noneOf(Fault.class);
        cured.addAll(demoCured);
        moves.forEach(move -> cured.add(move.fault()));
        demoCured = cured;
        EqChain more = MadeMoves.chain(moves);
        EqChain all = demoMoves.withGainDb(demoMoves.gainDb() + more.gainDb());
        for (EqFilter filter : more.filters()) {
            all = all.then(filter);
        }
        demoMoves = all;
    }

    private void endListening() {
        if (listening != null) {
            LivePicture last = listening.stop();
            listening = null;
            show(last, true);
        }
    }

    private void fail(String words) {
        Now old = now;
        publish(new Now(0, old.choice(), old.readings(), old.assessment(), Optional.empty(), -1, words));
    }

    private synchronized void publish(Now next) {
        now = new Now(now.number() + 1, next.choice(), next.readings(), next.assessment(), next.state(), next.progress(), next.problem());
    }
}
