package evenwood.ui.model;

import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.NoiseParts;
import evenwood.coach.hunt.RigFacts;
import evenwood.live.NoiseSpell;
import evenwood.report.HuntPicture;
import evenwood.report.Sentences;
import evenwood.sound.LiveInputs;
import java.util.Optional;
import java.util.concurrent.Callable;

/**
 * A noise hunt wherever it stands: listens beside the screen, one trial after the other.
 *
 * <p>Thread: the screen's.
 */
public final class HuntModel {
    /** How long each measurement listens; as the command does. */
    public static final double SECONDS = 6;

    private final RigModel rig;
    private final Later<NoiseParts> listening = new Later<>("evenwood-hunt");
    private Optional<HuntProgress> progress = Optional.empty();
    private String trial = "";
    private boolean unsteady;

    public HuntModel(RigModel rig) {
        this.rig = rig;
    }

    public Later<NoiseParts> listening() {
        return listening;
    }

    public Optional<HuntProgress> progress() {
        return progress;
    }

    /** The newest measurement went up and down by much. */
    public boolean isUnsteady() {
        return unsteady;
    }

    /** In words and numbers; empty before anything was measured. */
    public Optional<HuntPicture> picture(Words words) {
        return progress.map(each -> HuntPicture.of(each, Sentences.in(words.locale())));
    }

    /** Begins anew: the noise as it is now. */
    public void begin(Callable<NoiseParts> listen) {
        progress = Optional.empty();
        trial = "";
        listening.drop();
        listening.ask(listen);
    }

    /** What was asked for is done: how is the noise now? */
    public void tried(Callable<NoiseParts> listen) {
        trial = progress.flatMap(HuntProgress::next).orElse("");
        if (!trial.isEmpty()) {
            listening.drop();
            listening.ask(listen);
        }
    }

    /** What was asked for cannot be done here. */
    public void skip() {
        progress = progress.map(each -> each.next().map(each::without).orElse(each));
    }

    /** A measurement came in. */
    public void take(NoiseParts heard) {
        unsteady = heard.isUnsteady();
        if (progress.isEmpty()) {
            progress = Optional.of(HuntProgress.start(rig.wiring().presets().hunt("noise"), rig.rig().map(RigFacts::of).orElse(RigFacts.ALL), heard, Optional.empty()));
        } else if (!trial.isEmpty()) {
            progress = Optional.of(progress.get().after(trial, heard));
            trial = "";
        }
    }

    /** Listens to the input that is heard now, or to the system's usual one. */
    public static Callable<NoiseParts> input(Now now) {
        Optional<SoundChoice.Live> live = now.choice().filter(SoundChoice.Live.class::isInstance).map(SoundChoice.Live.class::cast);
        String name = live.map(SoundChoice.Live::inputName).filter(each -> !each.isEmpty()).orElse(null);
        int channel = Math.max(1, live.map(SoundChoice.Live::channel).orElse(1));
        return () -> NoiseSpell.listen(LiveInputs.opener(LiveInputs.choose(name), channel), SECONDS);
    }
}
