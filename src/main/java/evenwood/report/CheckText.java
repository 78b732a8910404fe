package evenwood.report;

import evenwood.coach.Assessment;
import evenwood.coach.Comparison;
import evenwood.coach.FaultChange;
import evenwood.coach.Move;
import evenwood.coach.RigAnswer;
import evenwood.judge.Fault;
import evenwood.judge.Finding;
import evenwood.judge.Severity;
import evenwood.judge.Statement;
import evenwood.judge.Verdict;
import evenwood.measure.NoiseReading;
import evenwood.measure.TakeReadings;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The result of a check in short, plain words: what to turn first, then why, then the numbers. */
public final class CheckText {
    private static final int WORD_WIDTH = 18;

    private static final Set<Fault> HUNTED = Set.of(Fault.HUM, Fault.BUZZ, Fault.HISS, Fault.TONE_INTERFERENCE);

    private final Sentences sentences;
    private final int widthCharacters;
    private final List<String> lines = new ArrayList<>();

    private CheckText(Sentences sentences, int widthCharacters) {
        this.sentences = sentences;
        this.widthCharacters = widthCharacters;
    }

    public static List<String> lines(Assessment assessment, Sentences sentences, int widthCharacters) {
        CheckText text = new CheckText(sentences, widthCharacters);
        text.head(assessment.readings());
        text.findings(assessment.verdict().findings(), assessment.readings().hasPlaying());
        text.moves(assessment.moves());
        text.predicted(assessment);
        assessment.comparison().ifPresent(text::comparison);
        text.wiring(assessment.verdict());
        text.hunt(assessment.verdict().findings());
        text.missing(assessment.verdict().missing());
        text.numbers(assessment.readings());
        return text.lines;
    }

    private void head(TakeReadings readings) {
        lines.add(readings.take().name());
        lines.add(String.format(Locale.ROOT, "%s, %s kHz, channel %d of %d; playing %.0f s, quiet %.0f s",
            clock(readings.take().durationSeconds()), plain(readings.take().format().sampleRateHz() / 1000.0),
            readings.take().format().channel(), readings.take().format().channels(),
            readings.activity().playingSeconds(), readings.activity().quietSeconds()));
        lines.add("");
    }

    private void findings(List<Finding> findings, boolean played) {
        if (findings.isEmpty()) {
            lines.add(played ? "Nothing wrong was found in level, distortion and noise." : "Nothing could be judged: no playing was heard.");
        }
        for (Finding finding : findings) {
            String mark = switch (finding.severity()) {
                case STRONG -> "!!!";
                case CLEAR -> "!! ";
                case SLIGHT -> "!  ";
            };
            wrap(mark + " " + pad(finding.fault().id()), sentences.say(finding.evidence()) + sure(finding.probability()));
        }
        lines.add("");
    }

    /** No control cures a noise; what finds its cause does. */
    private void hunt(List<Finding> findings) {
        if (findings.stream().anyMatch(each -> HUNTED.contains(each.fault()) && each.severity() != Severity.SLIGHT)) {
            wrap("", sentences.say("hunt.hint"));
            lines.add("");
        }
    }

    private void moves(List<Move> moves) {
        if (moves.isEmpty()) {
            return;
        }
        lines.add("Turn");
        for (Move move : moves) {
            wrap("  " + move.order() + ". ", sentences.say(move.control().plainName()) + ": " + change(move, sentences));
            wrap("     ", sentences.say(move.why()) + ".");
        }
        lines.add("");
    }

    private void predicted(Assessment assessment) {
        assessment.predicted().ifPresent(prediction -> {
            String unsure = prediction.peak().uncertaintyDb() < 0.1 ? "" : String.format(Locale.ROOT, " (±%.0f)", prediction.peak().uncertaintyDb());
            lines.add("Afterwards the loudest peak should be at " + db(prediction.peak().truePeakDbtp(), "dBTP") + unsure + ".");
            lines.add("");
        });
    }

    private void comparison(Comparison comparison) {
        lines.add("Against " + comparison.before());
        if (comparison.faults().isEmpty()) {
            lines.add("  nothing to compare: neither take has a fault, and the tone is the same");
        }
        for (FaultChange change : comparison.faults()) {
            wrap("  " + pad(change.fault().id()) + String.format(Locale.ROOT, "%-7s", change.change().id()),
                sentences.say(change.evidence()) + sure(change.confidence()));
        }
        for (RigAnswer answer : comparison.answers()) {
            wrap("  ", sentences.say("after.answered", answer.control().name(), answer.from().say(), answer.to().say(), answer.meantDb(),
                answer.answeredDb(), answer.halfWidthDb()));
        }
        lines.add("");
    }

    private void wiring(Verdict verdict) {
        verdict.wiring().ifPresent(wiring -> {
            lines.add("Against what your wiring should give");
            wiring.statements().forEach(statement -> wrap("  - ", sentences.say(statement) + "."));
            lines.add("");
        });
    }

    static String change(Move move, Sentences sentences) {
        if (move.kind() == Move.Kind.WIRING) {
            return sentences.say("move.plug");
        }
        if (move.from().isPresent() && move.to().isPresent()) {
            return sentences.say("move.from-to", move.from().get(), move.to().get());
        }
        double db = move.changeDb().orElse(0);
        return sentences.say(db > 0 ? "move.up" : "move.down", Math.abs(db));
    }

    private void missing(List<Statement> missing) {
        if (missing.isEmpty()) {
            return;
        }
        lines.add("Not known yet");
        for (Statement statement : missing) {
            wrap("  - ", sentences.say(statement) + ".");
        }
        lines.add("");
    }

    private void numbers(TakeReadings readings) {
        NoiseReading noise = readings.noise();
        lines.add(row("Level", "peak " + db(readings.truePeak().truePeakDbtp(), "dBTP"),
            "notes soft " + db(readings.dynamics().softDbfs(), "") + ", usual " + db(readings.dynamics().usualDbfs(), "")
                + ", hard " + db(readings.dynamics().hardDbfs(), "dBFS")));
        lines.add(row("Loudness", db(readings.loudness().integratedLufs(), "LUFS"),
            "range " + db(readings.loudness().rangeLu(), "LU")));
        lines.add(row("Noise", "floor " + db(noise.floorDbfs(), "dBFS") + " (" + db(noise.floorDbfsA(), "A-weighted") + ")",
            "playing " + db(readings.signalToNoiseDb(), "dB above it")));
        lines.add(row("", "hum " + db(noise.humDbfs(), ""), "buzz " + db(noise.buzzDbfs(), "") + ", hiss " + db(noise.hissDbfs(), "dBFS")));
        lines.add(row("Balance", "low " + db(readings.spectrum().lowDb(), ""), "mid " + db(readings.spectrum().midDb(), "")
            + ", high " + db(readings.spectrum().highDb(), "dB of the whole")));
    }

    private static String row(String name, String first, String second) {
        return String.format(Locale.ROOT, "%-10s%-40s%s", name, first, second).stripTrailing();
    }

    /** A level, or a dash when it was not measured. */
    private static String db(double level, String unit) {
        String number = Double.isInfinite(level) ? "–" : String.format(Locale.ROOT, "%.1f", level).replace('-', '−');
        return unit.isEmpty() ? number : number + " " + unit;
    }

    private static String sure(double probability) {
        return String.format(Locale.ROOT, " (%s)", probability >= 0.95 ? "sure" : probability >= 0.75 ? "fairly sure"
            : probability >= 0.4 ? "not sure" : "perhaps");
    }

    private static String clock(double seconds) {
        long whole = Math.round(seconds);
        return String.format(Locale.ROOT, "%d:%02d min", whole / 60, whole % 60);
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? String.valueOf((long) number) : String.valueOf(number);
    }

    private static String pad(String word) {
        return String.format(Locale.ROOT, "%-" + WORD_WIDTH + "s ", word);
    }

    /** Breaks between words; further lines are indented under the first one's text. */
    private void wrap(String start, String text) {
        StringBuilder line = new StringBuilder(start);
        boolean empty = true;
        for (String word : text.split(" ")) {
            if (!empty && line.length() + 1 + word.length() > widthCharacters) {
                lines.add(line.toString());
                line = new StringBuilder(" ".repeat(start.length()));
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        lines.add(line.toString());
    }
}
