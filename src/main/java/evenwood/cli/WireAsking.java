package evenwood.cli;

import evenwood.rig.Presets;
import evenwood.wiring.Question;
import evenwood.wiring.RigQuestions;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Asks in the terminal how a rig is plugged in and writes the rig file. */
final class WireAsking {
    private final Terminal terminal;
    private final RigQuestions questions;

    WireAsking(Terminal terminal, Presets presets) {
        this.terminal = terminal;
        questions = new RigQuestions(presets);
    }

    void write(Path file) {
        if (Files.exists(file)) {
            throw new BadInput("wire: " + file + " exists already; name a new file, or remove it first");
        }
        List<String> answers = new ArrayList<>();
        for (Optional<Question> next = questions.next(answers); next.isPresent(); next = questions.next(answers)) {
            answers.add(answer(next.get()));
        }
        ResultFile.write("wire", file.toString(), questions.rig(answers));
        terminal.note(file + " is written.");
    }

    private String answer(Question question) {
        terminal.note("");
        for (int i = 0; i < question.options().size(); i++) {
            terminal.note(String.format("  %2d  %s", i + 1, question.options().get(i).name()));
        }
        String prompt = terminal.sentences().say(question.key(), question.figures().toArray()) + " ";
        while (true) {
            String answer = terminal.ask(prompt).orElseThrow(() -> new BadInput("wire: the answers end before all was asked; nothing was written"));
            if (question.accepts(answer)) {
                return answer;
            }
            terminal.note("  " + terminal.sentences().say("ask.again-" + question.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-')));
        }
    }
}
