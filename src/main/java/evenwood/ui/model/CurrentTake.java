package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.coach.GuidedCheck;
import evenwood.coach.Move;
import evenwood.eq.EqChain;
import evenwood.eq.RigInUse;
import evenwood.live.LivePicture;
import evenwood.live.LiveState;
import evenwood.live.WholeTake;
import evenwood.measure.TakeReadings;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;
import java.util.List;
import java.util.Optional;
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
 * {@link Now} after another. Every take has a number: a job whose take is no longer the newest publishes nothing and ends as
 * soon as it notices. Whatever a job throws ends in a sentence, never in a take that seems to go on. Nothing here waits for the screen.
 */
public final class CurrentTake implements AutoCloseable {
    private static final long LOOK_EVERY_MS = 50;
    private static final Logger LOG = Logger.getLogger(CurrentTake.class.getName());

    private final TakeAdvice advice;
    private final DemoTurns demo;
    private final TakeSound sound;
    private final ScheduledExecutorService work = Executors.newSingleThreadScheduledExecutor(job -> {
        Thread thread = new Thread(job, "evenwood-window-work");
        thread.setDaemon(true);
        return thread;
    });
    private final StripHistory strip = new StripHistory();
    private volatile Now now = Now.NOTHING;
    private volatile int newest;
    private volatile int givenUp = -1;
    /** Of the work thread only. */
    private final HeardLive live = new HeardLive();

    public CurrentTake(Supplier<Optional<RigInUse>> rig) {
        this(rig, 1);
    }

    /** @param demoPace how many times faster than played the demo comes; 1 for people */
    public CurrentTake(Supplier<Optional<RigInUse>> rig, double demoPace) {
        advice = new TakeAdvice(rig);
        demo = new DemoTurns(demoPace);
        sound = new TakeSound(demo);
        work.scheduleWithFixedDelay(this::look, LOOK_EVERY_MS, LOOK_EVERY_MS, TimeUnit.MILLISECONDS);
    }

    /** The newest; never waits. */
    public Now now() {
        return now;
    }

    public StripHistory strip() {
        return strip;
    }

    /** Leaves what was heard and turns to something else, with no move made yet. @return the take's number */
    public int start(SoundChoice choice) {
        return start(choice, EqChain.FLAT);
    }

    /** @param demoControls what is already turned on the demo, if that is what is heard */
    public int start(SoundChoice choice, EqChain demoControls) {
        advice.begin();
        demo.stand(demoControls);
        return begin(choice);
    }

    /** Grows with every take that was started. */
    public int number() {
        return newest;
    }

    /** What the take before was like, when this one is the same again; empty otherwise. */
    public Optional<Assessment> before() {
        return advice.before();
    }

    /** From now on takes are held against this one; empty: against what such an instrument usually sounds like. */
    public void like(Optional<LikedTake> take) {
        advice.like(take);
        judgeAgain();
    }

    public Optional<LikedTake> liked() {
        return advice.liked();
    }

    private synchronized int begin(SoundChoice choice) {
        int mine = ++newest;
        publish(mine, Now.begun(choice, choice.isLive() ? -1 : 0));
        work.execute(() -> told(mine, () -> {
            live.letGo();
            strip.clear();
            sound.forget();
            if (mine == newest && choice.isLive()) {
                live.begin(sound.listen(choice), mine);
            } else if (mine == newest) {
                check(choice, mine);
            }
        }));
        return mine;
    }

    private void told(int mine, Runnable job) {
        try {
            job.run();
        } catch (RuntimeException | Error problem) {
            fail(mine, problem);
        }
    }

    /**
     * The same again from its beginning, with the first so many moves made: a live input is heard anew, the demo is played with
     * them. What was said until now is what the next take is compared with.
     */
    public void again(int movesMade) {
        Now old = now;
        old.choice().ifPresent(choice -> {
            List<Move> moves = old.assessment().map(Assessment::moves).orElse(List.of());
            List<Move> made = moves.subList(0, Math.min(movesMade, moves.size()));
            advice.turned(old.assessment(), made);
            demo.make(made);
            begin(choice);
        });
    }

    /** What the demo's invented player is asked for; empty lets it play all there is, once. */
    public void askDemo(Optional<GuidedCheck.Step> step) {
        demo.ask(step);
    }

    /** Ends a check under way; what was measured until then is shown. */
    public void cancel() {
        givenUp = newest;
    }

    /** Ends a live take and keeps what it measured. */
    public void stop() {
        int mine = newest;
        work.execute(() -> told(mine, this::endListening));
    }

    /** The coach looks again, because the rig is another. */
    public void judgeAgain() {
        work.execute(() -> {
            live.judgeAnew();
            int mine;
            Now old;
            synchronized (this) {
                mine = newest;
                old = now;
            }
            if (!live.isOn() && old.readings().isPresent()) {
                told(mine, () -> publish(mine, old.judged(assess(old.readings().get(), old.choice().orElseThrow(), mine))));
            }
        });
    }

    /** Opens what was heard once more, for the ears; empty when nothing of it was kept. */
    public Optional<SoundSource> soundAgain() {
        return now.choice().flatMap(sound::again);
    }

    @Override
    public void close() {
        newest++;
        stop();
        work.shutdown();
    }

    private void check(SoundChoice choice, int mine) {
        try (SoundSource opened = sound.open(choice)) {
            SoundSource source = new ThroughSource(opened, new StripTrace(strip, opened.format().sampleRateHz()), () -> mine != newest || mine == givenUp);
            WholeTake whole = WholeTake.measure(source, done -> publish(mine, Now.begun(choice, done.orElse(0))));
            if (mine == newest) {
                publish(mine, new Now(0, Optional.of(choice), Optional.of(whole.readings()), Optional.of(assess(whole.readings(), choice, mine)),
                    Optional.empty(), -1, whole.failure().map(Problem::of).orElse(Problem.NONE)));
            }
        }
    }

    /** Called again and again: is there anything new of a live take? */
    private void look() {
        if (!live.isOn() || live.take() != newest) {
            return;
        }
        try {
            Optional<LivePicture> news = live.news(now.state());
            if (news.isPresent() && news.get().state().phase() == LiveState.Phase.STOPPED) {
                endListening();
            } else {
                news.ifPresent(picture -> show(picture, false));
            }
        } catch (RuntimeException | Error problem) {
            fail(live.take(), problem);
            live.letGo();
        }
    }

    private void show(LivePicture picture, boolean over) {
        TakeReadings readings = picture.readings();
        publishLive(picture, now.assessment());
        if (live.isFresh(readings) || over) {
            publishLive(picture, Optional.of(assess(readings, now.choice().orElseThrow(), live.take())));
        }
    }

    private void publishLive(LivePicture picture, Optional<Assessment> assessment) {
        TakeReadings readings = picture.readings();
        strip.add(readings, assessment);
        publish(live.take(), new Now(0, now.choice(), Optional.of(readings), assessment, Optional.of(picture.state()), -1, Problem.NONE));
    }

    private Assessment assess(TakeReadings readings, SoundChoice choice, int mine) {
        return advice.of(readings, sound.forecast(choice, readings, () -> mine == newest && mine != givenUp));
    }

    /** What it measured last is shown, unless another take has begun. */
    private void endListening() {
        live.end().filter(last -> live.take() == newest).ifPresent(last -> show(last, true));
    }

    /** One sentence; what was measured stays. */
    private void fail(int mine, Throwable problem) {
        if (!(problem instanceof SoundProblem)) {
            LOG.log(Level.SEVERE, "take " + mine, problem);
        }
        publish(mine, now.failed(Problem.of(problem)));
    }

    /** Nothing of a take that is no longer the newest. */
    private synchronized void publish(int mine, Now next) {
        if (mine == newest) {
            now = next.numbered(now.number() + 1);
        }
    }
}
