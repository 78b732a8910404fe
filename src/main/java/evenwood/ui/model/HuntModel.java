package evenwood.ui.model;

import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.NoiseParts;
import evenwood.coach.hunt.RigFacts;
import evenwood.live.NoiseSoFar;
import evenwood.live.NoiseSpell;
import evenwood.report.HuntPicture;
import evenwood.report.Sentences;
import evenwood.rig.HuntTable;
import evenwood.sound.LiveInputs;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * A noise hunt wherever it stands: listens beside the screen, one trial after the other.
 *
 * <p>Thread: the screen's.
 */
public final class HuntModel {
    /** How long each measurement listens; as the command does. */
    public static final double SECONDS = 6;

    /** Listens to the noise, telling what is heard so far, and waits. */
    public interface Ear {
        NoiseParts listen(Consumer<NoiseSoFar> told) throws InterruptedException;
    }

    private final RigModel rig;
    private final Later<NoiseParts> listening = new Later<>("evenwood-hunt");
    private Optional<HuntProgress> progress = Optional.empty();
    /** Where the hunt stood before the newest measurement, so that it can be repeated. */
    private Optional<HuntProgress> before = Optional.empty();
    private Optional<String> chosen = Optional.empty();
    private String trial = "";
    private boolean unsteady;
    private volatile Optional<NoiseSoFar> soFar = Optional.empty();

    public HuntModel(RigModel rig) {
        this.rig = rig;
    }

    public Later<NoiseParts> listening() {
        return listening;
    }

    /** What the measurement under way has heard; empty before its first second. Thread: any. */
    public Optional<NoiseSoFar> soFar() {
        return soFar;
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

    /** What is to be done now: what tells most, or what the player would rather try; empty at the end. */
    public Optional<HuntPicture.Task> task(Words words) {
        return asked().map(id -> HuntPicture.task(id, Sentences.in(words.locale())));
    }

    /** What else could be tried here. */
    public List<HuntPicture.Task> others(Words words) {
        if (asked().isEmpty()) {
            return List.of();
        }
        HuntProgress now = progress.orElseThrow();
        List<String> made = now.steps().stream().map(step -> step.result().trial()).toList();
        return table().trials().stream().map(HuntTable.Trial::id)
            .filter(id -> !made.contains(id) && !now.hunt().impossible().contains(id) && !asked().equals(Optional.of(id)))
            .map(id -> HuntPicture.task(id, Sentences.in(words.locale()))).toList();
    }

    /** The player would rather try this one next. */
    public void choose(String id) {
        chosen = Optional.of(id);
    }

    private Optional<String> asked() {
        Optional<String> next = progress.flatMap(HuntProgress::next);
        return next.isPresent() && chosen.isPresent() ? chosen : next;
    }

    /** Begins anew: the noise as it is now. */
    public void begin(Ear ear) {
        progress = Optional.empty();
        before = Optional.empty();
        chosen = Optional.empty();
        trial = "";
        listen(ear);
    }

    /** What was asked for is done: how is the noise now? */
    public void tried(Ear ear) {
        trial = asked().orElse("");
        if (!trial.isEmpty()) {
            listen(ear);
        }
    }

    /** Something disturbed the newest measurement: the same once more. */
    public void repeat(Ear ear) {
        if (before.isEmpty()) {
            begin(ear);
            return;
        }
        trial = progress.orElseThrow().steps().get(progress.get().steps().size() - 1).result().trial();
        progress = before;
        listen(ear);
    }

    private void listen(Ear ear) {
        soFar = Optional.empty();
        unsteady = false;
        listening.drop();
        listening.ask(() -> ear.listen(heard -> soFar = Optional.of(heard)));
    }

    /** What was asked for cannot be done here. */
    public void skip() {
        progress = progress.map(each -> asked().map(each::without).orElse(each));
        chosen = Optional.empty();
    }

    /** A measurement came in. */
    public void take(NoiseParts heard) {
        unsteady = heard.isUnsteady();
        if (progress.isEmpty()) {
            progress = Optional.of(HuntProgress.start(table(), rig.rig().map(RigFacts::of).orElse(RigFacts.ALL), heard, Optional.empty()));
        } else if (!trial.isEmpty()) {
            before = progress;
            progress = Optional.of(progress.get().after(trial, heard));
            trial = "";
            chosen = Optional.empty();
        }
    }

    private HuntTable table() {
        return rig.wiring().presets().hunt("noise");
    }

    /** Listens to the input that is heard now, or to the system's usual one. */
    public static Ear input(Now now) {
        Optional<SoundChoice.Live> live = now.choice().filter(SoundChoice.Live.class::isInstance).map(SoundChoice.Live.class::cast);
        String name = live.map(SoundChoice.Live::inputName).filter(each -> !each.isEmpty()).orElse(null);
        int channel = Math.max(1, live.map(SoundChoice.Live::channel).orElse(1));
        return told -> NoiseSpell.listen(LiveInputs.opener(LiveInputs.choose(name), channel), SECONDS, told);
    }
}
