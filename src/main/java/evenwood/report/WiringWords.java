package evenwood.report;

import evenwood.judge.Statement;
import evenwood.rig.CableRun;
import evenwood.rig.Line;
import evenwood.rig.Link;
import evenwood.rig.PluggedBox;
import evenwood.rig.PluggedInput;
import evenwood.rig.Power;
import evenwood.wiring.WiringVerdict;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Chains and their verdicts in words. */
public final class WiringWords {
    private static final MathContext THREE_FIGURES = new MathContext(3);

    private WiringWords() { }

    /** What is wrong. */
    public static Statement evidence(WiringVerdict verdict) {
        return new Statement("wiring." + verdict.fault().id(), rounded(verdict.figures()));
    }

    /** What helps. */
    public static Statement cure(WiringVerdict verdict) {
        return new Statement("wiring-cure." + verdict.fault().id(), rounded(verdict.figures()));
    }

    /** One line from the pickup to the input: "A → 3 m instrument cable → B (phantom power) → C". */
    static String chain(String pickup, Line line) {
        List<String> words = new ArrayList<>(List.of(pickup));
        line.links().forEach(link -> words.add(link(link)));
        words.add(input(line.input()));
        return String.join(" → ", words);
    }

    static String link(Link link) {
        return link instanceof CableRun run ? cable(run) : box((PluggedBox) link);
    }

    static String cable(CableRun run) {
        return plain(run.metres()) + " m " + run.cable().name();
    }

    static String box(PluggedBox plugged) {
        List<String> set = new ArrayList<>();
        if (plugged.box().gain().mostDb() > plugged.box().gain().leastDb()) {
            set.add("gain " + plain(plugged.gainDb()) + " dB");
        }
        if (plugged.padDb() > 0) {
            set.add("pad " + plain(plugged.padDb()) + " dB");
        }
        if (plugged.powered() != Power.NONE && plugged.powered() != Power.MAINS) {
            set.add(plugged.powered().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        } else if (plugged.box().power() != Power.NONE && plugged.powered() == Power.NONE) {
            set.add("no power");
        }
        if (plugged.groundLift()) {
            set.add("ground lift on");
        }
        return with(plugged.box().name(), set);
    }

    static String input(PluggedInput plugged) {
        List<String> set = new ArrayList<>();
        plugged.gainDb().ifPresent(gainDb -> set.add("gain " + plain(gainDb) + " dB"));
        if (plugged.input().phantomVolts() > 0) {
            set.add(plugged.phantom() ? "phantom on" : "phantom off");
        }
        return with(plugged.input().name(), set);
    }

    private static String with(String name, List<String> set) {
        return name + (set.isEmpty() ? "" : " (" + String.join(", ", set) + ")");
    }

    static String plain(double number) {
        return new BigDecimal(number).round(THREE_FIGURES).stripTrailingZeros().toPlainString().replace('-', '−');
    }

    /** Three figures are what a preset's values are worth. */
    private static List<Object> rounded(List<Object> figures) {
        return figures.stream().map(figure -> figure instanceof Double number ? (Object) new BigDecimal(number).round(THREE_FIGURES).doubleValue() : figure).toList();
    }
}
