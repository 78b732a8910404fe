package evenwood.report;

import evenwood.wiring.Alternative;
import evenwood.wiring.Dbu;
import evenwood.wiring.Device;
import evenwood.wiring.Fit;
import evenwood.wiring.Joint;
import evenwood.wiring.JointReport;
import evenwood.wiring.WayReport;
import evenwood.wiring.WiringRules;
import evenwood.wiring.WiringVerdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** A connection plan in plain text: the chain from top to bottom, what is wrong at its joints, a table of levels. */
public final class WireText {
    private final WirePlan plan;
    private final Sentences sentences;
    private final int widthCharacters;
    private final List<String> lines = new ArrayList<>();

    private WireText(WirePlan plan, Sentences sentences, int widthCharacters) {
        this.plan = plan;
        this.sentences = sentences;
        this.widthCharacters = widthCharacters;
    }

    public static List<String> lines(WirePlan plan, Sentences sentences, int widthCharacters) {
        WireText text = new WireText(plan, sentences, widthCharacters);
        text.lines.add(sentences.say("wire.head", plan.rig().name(), plan.rig().instrument().name(), sentences.number(plan.report().lowestHz(), 0)));
        text.lines.add("");
        text.diagram();
        text.verdicts();
        text.levels();
        plan.report().ways().forEach(text::end);
        text.advice();
        return text.lines;
    }

    private void diagram() {
        lines.add("  " + plan.report().connection().pickup().name());
        plan.report().main().joints().forEach(this::joint);
        plan.report().thru().ifPresent(way -> {
            lines.add("");
            lines.add("  " + sentences.say("wire.and-thru", plan.report().connection().main().boxWithThru().orElseThrow().box().name()));
            way.joints().forEach(this::joint);
        });
        lines.add("");
    }

    private void joint(JointReport report) {
        Joint joint = report.joint();
        Fit fit = WiringRules.worstAt(plan.verdicts(), joint);
        lines.add("    |  " + joint.cable().map(WiringWords::cable).orElse(sentences.say("wire.direct")));
        lines.add(String.format(Locale.ROOT, "    %d  %s", joint.number(), say(fit)));
        lines.add("  " + (joint.to() instanceof Device.Between between ? WiringWords.box(between.plugged()) : WiringWords.input(((Device.End) joint.to()).plugged())));
    }

    private void verdicts() {
        if (plan.verdicts().isEmpty()) {
            lines.add(sentences.say("wire.all-fits"));
        }
        for (WiringVerdict verdict : plan.verdicts()) {
            String start = mark(verdict.fit()) + " " + sentences.say("wire.joint", verdict.joint()) + "  ";
            TextWrap.wrap(lines, widthCharacters, start, sentences.say(WiringWords.evidence(verdict)) + ".");
            TextWrap.wrap(lines, widthCharacters, " ".repeat(start.length()), sentences.say(WiringWords.cure(verdict)) + ".");
        }
        lines.add("");
    }

    private void levels() {
        lines.add(String.format(Locale.ROOT, "%-7s %-15s %-9s %-9s %-9s %-10s %-26s %-11s %s",
            (Object[]) Stream.of("joint", "usual", "hardest", "room", "noise", "playing", "impedance", "bass", "cable").map(word -> sentences.say("wire.column." + word)).toArray(String[]::new)));
        for (JointReport each : plan.report().joints()) {
            lines.add(String.format(Locale.ROOT, "%-7d %-15s %-9s %-9s %-9s %-10s %-26s %-11s %s", each.joint().number(),
                sentences.number(each.usualDbu(), 0) + " dBu/" + sentences.number(Dbu.toDbv(each.usualDbu()), 0) + " dBV", sentences.number(each.peakDbu(), 0) + " dBu",
                each.headroomDb().isPresent() ? sentences.number(each.headroomDb().getAsDouble(), 0) + " dB" : "-", sentences.number(each.noiseDbu(), 0) + " dBu",
                sentences.say("wire.over", sentences.number(each.signalToNoiseDb(), 0)), sentences.say("wire.into", ohms(each.sourceOhms()), ohms(each.loadOhms())), hz(each.bassCornerHz(), sentences),
                each.joint().cable().isEmpty() ? "-" : sentences.say("wire.cable-takes", sentences.number(each.cableLevelDb(), 1), sentences.number(each.cableTrebleDb(), 1))));
        }
        lines.add("");
    }

    private void end(WayReport way) {
        boolean none = way.input().input().gain().mostDb() == way.input().input().gain().leastDb();
        String gain = none ? sentences.say("wire.no-gain")
            : sentences.say(way.input().gainDb().isPresent() ? "wire.gain" : "wire.gain-wanted", sentences.number(way.gainDb(), 0));
        String scale = way.input().input().digital() ? "dBFS" : sentences.say("wire.full-output");
        lines.add(sentences.say("wire.end", way.input().input().name(), gain, sentences.number(way.usualDbfs(), 0), scale, signed(way.peakDbfs()),
            sentences.number(way.noiseDbfs(), 0), sentences.number(way.signalToNoiseDb(), 0)));
    }

    private void advice() {
        plan.advice().atHand().ifPresent(better -> better(sentences.say("wire.better"), better));
        plan.advice().buyFirst().ifPresent(better -> better(sentences.say("wire.buy-first", better.toBuy().get(0)), better));
    }

    private void better(String title, Alternative better) {
        lines.add("");
        lines.add(title + (better.worst() == Fit.RIGHT ? "" : " " + sentences.say("wire.then", say(better.worst()))));
        TextWrap.wrap(lines, widthCharacters, "  ", WiringWords.chain(better.report().connection().pickup().name(), better.report().connection().main()));
    }

    private String say(Fit fit) {
        return sentences.say("wire.fit." + WireSheet.word(fit));
    }

    private static String mark(Fit fit) {
        return switch (fit) {
            case DANGER -> "!!!";
            case WRONG -> "!! ";
            case TOLERABLE, RIGHT -> "!  ";
        };
    }

    static String hz(OptionalDouble corner, Sentences sentences) {
        if (corner.isEmpty() || corner.getAsDouble() < 20) {
            return sentences.say("wire.under-20-hz");
        }
        return corner.getAsDouble() < 1000 ? sentences.number(corner.getAsDouble(), 0) + " Hz" : sentences.number(corner.getAsDouble() / 1000, 1) + " kHz";
    }

    static String ohms(double ohms) {
        return ohms < 1000 ? WiringWords.plain(ohms) + " Ω" : ohms < 1e6 ? WiringWords.plain(ohms / 1000) + " kΩ" : WiringWords.plain(ohms / 1e6) + " MΩ";
    }

    private String signed(double db) {
        return (db >= 0.5 ? "+" : "") + sentences.number(db, 0);
    }
}
