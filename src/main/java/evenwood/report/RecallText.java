package evenwood.report;

import evenwood.coach.Recall;
import evenwood.journal.TakeLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The checklist that sets a rig as it stood when a take was kept. */
public final class RecallText {
    private RecallText() { }

    public static List<String> lines(TakeLine take, Recall recall, Sentences sentences) {
        List<String> lines = new ArrayList<>();
        lines.add(new JournalText(sentences).line(take).strip());
        lines.add("");
        if (recall.translated()) {
            lines.add(sentences.say("journal.recall-translated"));
        }
        for (Recall.Step step : recall.steps()) {
            lines.add(String.format(Locale.ROOT, "[%s] %-14s %s", step.isThere() ? "x" : " ", step.control(), words(step, sentences)));
        }
        lines.add("");
        if (recall.translated()) {
            lines.add(sentences.say("journal.recall-left", recall.leftDb()));
        }
        lines.add(sentences.say("journal.recall-check", String.valueOf(take.id())));
        return lines;
    }

    private static String words(Recall.Step step, Sentences sentences) {
        if (step.to().isEmpty()) {
            return sentences.say("journal.recall-gain");
        }
        if (step.isThere()) {
            return sentences.say("journal.recall-stays", step.to().get());
        }
        return step.from().map(from -> sentences.say("journal.recall-turn", from, step.to().get())).orElse(step.to().get());
    }

    /** {@code evenwood.journal-recall/1} */
    public static String json(TakeLine take, Recall recall) {
        return JsonFields.object("evenwood.journal-recall/1", json -> json
            .count("take", take.id())
            .flag("translated", recall.translated())
            .number("leftDb", recall.leftDb())
            .parts("steps", recall.steps(), (part, step) -> part
                .text("control", step.control()).text("from", step.from()).text("to", step.to()).flag("there", step.isThere())));
    }
}
