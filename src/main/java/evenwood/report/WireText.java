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
        text.lines.add(plan.rig().name() + ": " + plan.rig().instrument().name() + ", lowest note " + number(plan.report().lowestHz(), 0) + " Hz");
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
            lines.add("  and from the thru socket of " + plan.report().connection().main().boxWithThru().orElseThrow().box().name());
            way.joints().forEach(this::joint);
        });
        lines.add("");
    }

    private void joint(JointReport report) {
        Joint joint = report.joint();
        Fit fit = WiringRules.worstAt(plan.verdicts(), joint);
        lines.add("    |  " + joint.cable().map(WiringWords::cable).orElse("plugged in directly"));
        lines.add(String.format(Locale.ROOT, "    %d  %s", joint.number(), word(fit)));
        lines.add("  " + (joint.to() instanceof Device.Between between ? WiringWords.box(between.plugged()) : WiringWords.input(((Device.End) joint.to()).plugged())));
    }

    private void verdicts() {
        if (plan.verdicts().isEmpty()) {
            lines.add("Everything fits.");
        }
        for (WiringVerdict verdict : plan.verdicts()) {
            TextWrap.wrap(lines, widthCharacters, mark(verdict.fit()) + " joint " + verdict.joint() + "  ", sentences.say(WiringWords.evidence(verdict)) + ".");
            TextWrap.wrap(lines, widthCharacters, "             ", sentences.say(WiringWords.cure(verdict)) + ".");
        }
        lines.add("");
    }

    private void levels() {
        lines.add("Joint   usual           hardest   room      noise     playing    impedance                  bass from   cable takes");
        for (JointReport each : plan.report().joints()) {
            lines.add(String.format(Locale.ROOT, "%-7d %-15s %-9s %-9s %-9s %-10s %-26s %-11s %s", each.joint().number(),
                number(each.usualDbu(), 0) + " dBu/" + number(Dbu.toDbv(each.usualDbu()), 0) + " dBV", number(each.peakDbu(), 0) + " dBu",
                each.headroomDb().isPresent() ? number(each.headroomDb().getAsDouble(), 0) + " dB" : "-", number(each.noiseDbu(), 0) + " dBu",
                number(each.signalToNoiseDb(), 0) + " dB over", ohms(each.sourceOhms()) + " into " + ohms(each.loadOhms()), hz(each.bassCornerHz()),
                each.joint().cable().isEmpty() ? "-" : number(each.cableLevelDb(), 1) + " dB, " + number(each.cableTrebleDb(), 1) + " dB at 10 kHz"));
        }
        lines.add("");
    }

    private void end(WayReport way) {
        boolean none = way.input().input().gain().mostDb() == way.input().input().gain().leastDb();
        String gain = none ? "no gain" : "gain " + number(way.gainDb(), 0) + " dB" + (way.input().gainDb().isPresent() ? "" : " (where it should stand)");
        String scale = way.input().input().digital() ? "dBFS" : "dB of full output";
        lines.add(String.format(Locale.ROOT, "At %s, %s: usual playing %s %s, hardest peaks %s, noise %s (%s dB under usual playing)",
            way.input().input().name(), gain, number(way.usualDbfs(), 0), scale, signed(way.peakDbfs()), number(way.noiseDbfs(), 0),
            number(way.signalToNoiseDb(), 0)));
    }

    private void advice() {
        plan.advice().atHand().ifPresent(better -> better("Better with what you have", better));
        plan.advice().buyFirst().ifPresent(better -> better("To buy first: " + better.toBuy().get(0), better));
    }

    private void better(String title, Alternative better) {
        lines.add("");
        lines.add(title + (better.worst() == Fit.RIGHT ? "" : " (then " + word(better.worst()) + ")"));
        TextWrap.wrap(lines, widthCharacters, "  ", WiringWords.chain(better.report().connection().pickup().name(), better.report().connection().main()));
    }

    static String word(Fit fit) {
        return switch (fit) {
            case RIGHT -> "fits";
            case TOLERABLE -> "works, with losses";
            case WRONG -> "WRONG";
            case DANGER -> "DANGER";
        };
    }

    private static String mark(Fit fit) {
        return switch (fit) {
            case DANGER -> "!!!";
            case WRONG -> "!! ";
            case TOLERABLE, RIGHT -> "!  ";
        };
    }

    static String hz(OptionalDouble corner) {
        if (corner.isEmpty() || corner.getAsDouble() < 20) {
            return "under 20 Hz";
        }
        return corner.getAsDouble() < 1000 ? number(corner.getAsDouble(), 0) + " Hz" : number(corner.getAsDouble() / 1000, 1) + " kHz";
    }

    static String ohms(double ohms) {
        return ohms < 1000 ? WiringWords.plain(ohms) + " Ω" : ohms < 1e6 ? WiringWords.plain(ohms / 1000) + " kΩ" : WiringWords.plain(ohms / 1e6) + " MΩ";
    }

    private static String signed(double db) {
        return (db >= 0.5 ? "+" : "") + number(db, 0);
    }

    static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value + 0.0).replace('-', '−').replaceAll("^−(0(?:\\.0+)?)$", "$1");
    }
}
