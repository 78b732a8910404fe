package evenwood.cli;

import evenwood.coach.hunt.EarthRefusal;
import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.NoiseParts;
import evenwood.live.NoiseSoFar;
import evenwood.live.NoiseSpell;
import evenwood.report.HuntPicture;
import evenwood.report.HuntText;
import evenwood.report.Sentences;
import evenwood.rig.HuntTable;
import evenwood.sound.LineOpener;
import evenwood.sound.SoundProblem;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;

/** A hunt with a player: says what to do, waits until it is done, listens. Ctrl-C, or an input that fails, loses nothing that was measured. */
final class HuntAsking {
    private static final int TEXT_WIDTH = 100;

    private final Terminal terminal;
    private final HuntTable table;
    private final Set<HuntTable.Need> facts;
    private final Optional<HuntTable.Part> wanted;
    private final LineOpener opener;
    private final double seconds;
    private final boolean json;
    private final List<String> remarks;
    private final Sentences sentences;
    private final Interruption interruption;
    private final TypedLines typed;
    private boolean deviceFailed;

    HuntAsking(Terminal terminal, HuntTable table, Set<HuntTable.Need> facts, Optional<HuntTable.Part> wanted, LineOpener opener, double seconds, boolean json,
               List<String> remarks, Interruption interruption, TypedLines typed) {
        this.terminal = terminal;
        this.table = table;
        this.facts = facts;
        this.wanted = wanted;
        this.opener = opener;
        this.seconds = seconds;
        this.json = json;
        this.remarks = remarks;
        this.interruption = interruption;
        this.typed = typed;
        sentences = terminal.sentences();
    }

    /** As far as the player went; empty when Ctrl-C came before anything was measured. */
    Optional<HuntProgress> hunt() {
        terminal.note(sentences.say("hunt.begin") + ".");
        Optional<NoiseParts> before = asked("hunt.enter-first").isPresent() ? heard() : Optional.empty();
        if (before.isEmpty() && !interruption.isAsked()) {
            throw new BadInput("hunt: nobody answers; with recordings: evenwood hunt --from FILE TRIAL=FILE");
        }
        return before.map(this::hunted);
    }

    /** Whether the input failed and was not heard again. */
    boolean hasDeviceFailed() {
        return deviceFailed;
    }

    private HuntProgress hunted(NoiseParts before) {
        HuntProgress progress = HuntProgress.start(table, facts, before, wanted);
        HuntText.noiseLines(HuntPicture.of(progress, sentences), sentences, TEXT_WIDTH).forEach(this::said);
        for (Optional<String> next = progress.next(); next.isPresent(); next = progress.next()) {
            Optional<HuntProgress> further = tried(progress, next.get());
            if (further.isEmpty()) {
                return progress;
            }
            progress = further.get();
        }
        return progress;
    }

    /** Empty when the player wants no more. */
    private Optional<HuntProgress> tried(HuntProgress progress, String offered) {
        terminal.note((progress.steps().size() + 1) + ". " + sentences.say("hunt.do." + offered) + ".");
        while (true) {
            String answer = asked("hunt.enter").orElse("q").strip().toLowerCase(Locale.ROOT);
            if (answer.equals("q")) {
                return Optional.empty();
            }
            if (answer.equals("s")) {
                return Optional.of(progress.without(offered));
            }
            if (EarthRefusal.isMeant(answer)) {
                terminal.note(sentences.say("hunt.refused") + ".");
            } else if (answer.isEmpty() || table.trial(answer).isPresent()) {
                Optional<HuntProgress> further = measured(progress, answer.isEmpty() ? offered : answer);
                if (further.isPresent()) {
                    return further;
                }
            } else {
                terminal.note(sentences.say("hunt.trials", String.join(", ", table.trials().stream().map(HuntTable.Trial::id).toList())));
            }
        }
    }

    /** Empty when nothing could be heard: what is known stays, and the player is asked again. */
    private Optional<HuntProgress> measured(HuntProgress progress, String trial) {
        Optional<NoiseParts> after;
        try {
            after = heard();
            deviceFailed = false;
        } catch (SoundProblem problem) {
            deviceFailed = true;
            terminal.note(problem.getMessage());
            return Optional.empty();
        }
        return after.map(parts -> {
            HuntProgress further = progress.after(trial, parts);
            HuntText.newest(HuntPicture.of(further, sentences), sentences, TEXT_WIDTH).forEach(this::said);
            if (further.next().isPresent()) {
                terminal.note(sentences.say("hunt.back") + ".");
            }
            return further;
        });
    }

    private Optional<String> asked(String key) {
        terminal.prompt(sentences.say(key) + " ");
        return typed.await(interruption);
    }

    /** Empty when Ctrl-C came. */
    private Optional<NoiseParts> heard() {
        terminal.note(sentences.say("hunt.listening", seconds));
        AtomicReference<NoiseSoFar> newest = new AtomicReference<>();
        Optional<NoiseParts> parts = NoiseSpell.listen(opener, seconds, newest::set, () -> {
            Optional.ofNullable(newest.getAndSet(null)).ifPresent(soFar ->
                terminal.overwrite(sentences.say("hunt.listening-now", soFar.done() * seconds, seconds, HuntText.now(soFar.parts(), sentences))));
            return interruption.isAsked();
        });
        terminal.overwrite("");
        if (parts.isPresent() && parts.get().isUnsteady()) {
            remarks.add(sentences.say("hunt.unsteady"));
            terminal.note(sentences.say("hunt.unsteady") + ".");
        }
        return parts;
    }

    /** With JSON only the object goes to standard output. */
    private void said(String line) {
        if (json) {
            terminal.note(line);
        } else {
            terminal.line(line);
        }
    }
}
