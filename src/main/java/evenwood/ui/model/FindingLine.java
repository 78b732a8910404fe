package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.coach.FaultChange;
import evenwood.judge.Finding;
import evenwood.judge.Severity;
import evenwood.judge.Statement;
import java.util.ArrayList;
import java.util.List;

/**
 * What was found, line by line, for people.
 *
 * @param fault    the fault's word
 * @param severity how much it matters, for the shape beside it
 * @param grade    the same in words, and how sure
 * @param evidence what was measured
 */
public record FindingLine(String fault, Severity severity, String grade, String evidence) {
    public static List<FindingLine> of(Assessment assessment, Words words) {
        return assessment.verdict().findings().stream().map(finding -> of(finding, words)).toList();
    }

    private static FindingLine of(Finding finding, Words words) {
        return new FindingLine(words.fault(finding.fault()), finding.severity(),
            words.say("finding.grade", words.severity(finding.severity()), words.sure(finding.probability())), words.say(finding.evidence()));
    }

    /** What could not be judged, one sentence each. */
    public static List<String> missing(Assessment assessment, Words words) {
        List<String> sentences = new ArrayList<>();
        for (Statement statement : assessment.verdict().missing()) {
            sentences.add(words.say("missing.sentence", words.say(statement)));
        }
        return sentences;
    }

    /**
     * One fault beside the take before.
     *
     * @param fault    the fault's word
     * @param change   better, the same or worse
     * @param word     the same in a word
     * @param evidence what was measured
     */
    public record Changed(String fault, FaultChange.Change change, String word, String evidence) { }

    /** Empty when there is no take before. */
    public static List<Changed> changes(Assessment assessment, Words words) {
        return assessment.comparison().map(each -> each.faults().stream().map(change -> new Changed(words.fault(change.fault()), change.change(),
            words.say("change." + change.change().id()), words.say(change.evidence()))).toList()).orElse(List.of());
    }
}
