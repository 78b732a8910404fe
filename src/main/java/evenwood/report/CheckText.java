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
        lines.add(sentences.say("check.head", clock(readings.take().durationSeconds()), readings.take().format().sampleRateHz() / 1000.0,
            readings.take().format().channel(), readings.take().format().channels(),
            readings.activity().playingSeconds(), readings.activity().quietSeconds()));
        lines.add("");
    }

    private void findings(List<Finding> findings, boolean played) {
        if (findings.isEmpty()) {
            lines.add(sentences.say(played ? "check.nothing-wrong" : "check.nothing-played"));
        }
        for (Finding finding : findings) {
            String mark = switch (finding.severity()) {
                case STRONG -> "!!!";
                case CLEAR -> "!! ";
                case SLIGHT -> "!  ";
            };
            wrap(mark + " " + pad(sentences.say("fault." + finding.fault().id())), sentences.say(finding.evidence()) + sure(finding.probability()));
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
        lines.add(sentences.say("check.turn"));
        for (Move move : moves) {
            wrap("  " + move.order() + ". ", sentences.say(move.control().plainName()) + ": " + change(move, sentences));
            wrap("     ", sentences.say(move.why()) + ".");
        }
        lines.add("");
    }

    private void predicted(Assessment assessment) {
        assessment.predicted().ifPresent(prediction -> {
            String unsure = prediction.peak().uncertaintyDb() < 0.1 ? "" : String.format(Locale.ROOT, " (±%.0f)", prediction.peak().uncertaintyDb());
            lines.add(sentences.say("check.afterwards", db(prediction.peak().truePeakDbtp(), "dBTP") + unsure));
            lines.add("");
        });
    }

    private void comparison(Comparison comparison) {
        lines.add(sentences.say("check.against", comparison.before()));
        if (comparison.faults().isEmpty()) {
            lines.add("  " + sentences.say("check.nothing-to-compare"));
        }
        for (FaultChange change : comparison.faults()) {
            wrap("  " + pad(sentences.say("fault." + change.fault().id())) + String.format(Locale.ROOT, "%-7s", sentences.say("check.change-" + change.change().id())),
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
            lines.add(sentences.say("check.against-wiring"));
            wiring.statements().forEach(statement -> wrap("  - ", sentences.say(statement) + "."));
            lines.add("");
        });
    }

    static String change(Move move, Sentences sentences) {
        if (move.kind() == Move.Kind.WIRING) {
            return sentences.say(move.withoutTurning());
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
        lines.add(sentences.say("check.not-known"));
        for (Statement statement : missing) {
            wrap("  - ", sentences.say(statement) + ".");
        }
        lines.add("");
    }

    private void numbers(TakeReadings readings) {
        NoiseReading noise = readings.noise();
        row("level", sentences.say("check.peak", db(readings.truePeak().truePeakDbtp(), "dBTP")), sentences.say("check.notes", db(readings.dynamics().softDbfs(), ""),
            db(readings.dynamics().usualDbfs(), ""), db(readings.dynamics().hardDbfs(), "dBFS")));
        row("loudness", db(readings.loudness().integratedLufs(), "LUFS"), sentences.say("check.range", db(readings.loudness().rangeLu(), "LU")));
        row("noise", sentences.say("check.floor", db(noise.floorDbfs(), "dBFS"), db(noise.floorDbfsA(), "")), sentences.say("check.playing-above", db(readings.signalToNoiseDb(), "dB")));
        row("", sentences.say("check.hum", db(noise.humDbfs(), "")), sentences.say("check.buzz-and-hiss", db(noise.buzzDbfs(), ""), db(noise.hissDbfs(), "dBFS")));
        row("balance", sentences.say("check.low", db(readings.spectrum().lowDb(), "")), sentences.say("check.mid-and-high", db(readings.spectrum().midDb(), ""),
            db(readings.spectrum().highDb(), "dB")));
    }

    private void row(String name, String first, String second) {
        lines.add(String.format(Locale.ROOT, "%-10s%-38s  %s", name.isEmpty() ? "" : sentences.say("check.row-" + name), first, second).stripTrailing());
    }

    /** A level, or a dash when it was not measured. */
    private String db(double level, String unit) {
        String number = sentences.level(level);
        return unit.isEmpty() ? number : number + " " + unit;
    }

    private String sure(double probability) {
        return " (" + sentences.say(probability >= 0.95 ? "check.sure" : probability >= 0.75 ? "check.fairly-sure"
            : probability >= 0.4 ? "check.not-sure" : "check.perhaps") + ")";
    }

    private static String clock(double seconds) {
        long whole = Math.round(seconds);
        return String.format(Locale.ROOT, "%d:%02d min", whole / 60, whole % 60);
    }

    private static String pad(String word) {
        return String.format(Locale.ROOT, "%-" + WORD_WIDTH + "s ", word);
    }

    private void wrap(String start, String text) {
        TextWrap.wrap(lines, widthCharacters, start, text);
    }
}
