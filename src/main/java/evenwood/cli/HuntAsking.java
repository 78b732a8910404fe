package evenwood.cli;

import evenwood.coach.hunt.EarthRefusal;
import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.NoiseParts;
import evenwood.live.NoiseSpell;
import evenwood.report.HuntPicture;
import evenwood.report.HuntText;
import evenwood.report.Sentences;
import evenwood.rig.HuntTable;
import evenwood.sound.LineOpener;
import evenwood.sound.LiveInputs;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** A hunt with a player: says what to do, waits until it is done, listens. */
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
    private final Sentences sentences = Sentences.english();

    HuntAsking(Terminal terminal, HuntTable table, Set<HuntTable.Need> facts, Optional<HuntTable.Part> wanted, String input, int channel,
               double seconds, boolean json, List<String> remarks) {
        this.terminal = terminal;
        this.table = table;
        this.facts = facts;
        this.wanted = wanted;
        this.opener = LiveInputs.opener(LiveInputs.choose(input), channel);
        this.seconds = seconds;
        this.json = json;
        this.remarks = remarks;
    }

    HuntProgress hunt() {
        terminal.note(sentences.say("hunt.begin") + ".");
        terminal.ask("Enter when all is as when it hums or hisses. ")
            .orElseThrow(() -> new BadInput("hunt: nobody answers; with recordings: evenwood hunt --from FILE TRIAL=FILE"));
        HuntProgress progress = HuntProgress.start(table, facts, heard(), wanted);
        HuntText.noiseLines(HuntPicture.of(progress, sentences), TEXT_WIDTH).forEach(this::said);
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
            String answer = terminal.ask("Enter when done (s: cannot be done, q: no more, or another trial's name): ").orElse("q").strip().toLowerCase(Locale.ROOT);
            if (answer.equals("q")) {
                return Optional.empty();
            }
            if (answer.equals("s")) {
                return Optional.of(progress.without(offered));
            }
            if (EarthRefusal.isMeant(answer)) {
                terminal.note(sentences.say("hunt.refused") + ".");
            } else if (answer.isEmpty() || table.trial(answer).isPresent()) {
                return Optional.of(measured(progress, answer.isEmpty() ? offered : answer));
            } else {
                terminal.note("There are these trials: " + String.join(", ", table.trials().stream().map(HuntTable.Trial::id).toList()));
            }
        }
    }

    private HuntProgress measured(HuntProgress progress, String trial) {
        HuntProgress further = progress.after(trial, heard());
        HuntText.newest(HuntPicture.of(further, sentences), TEXT_WIDTH).forEach(this::said);
        if (further.next().isPresent()) {
            terminal.note(sentences.say("hunt.back") + ".");
        }
        return further;
    }

    private NoiseParts heard() {
        terminal.note(String.format(Locale.ROOT, "Listening for %.0f s ...", seconds));
        NoiseParts parts = NoiseSpell.listen(opener, seconds);
        if (parts.isUnsteady()) {
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
