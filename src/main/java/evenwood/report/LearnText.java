package evenwood.report;

import evenwood.rig.LearnedControl;
import evenwood.rig.Setting;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;

/** What was learned of a control, in words: each position against the one where it does least. */
public final class LearnText {
    private static final double HIGHEST_HZ = 16_000;
    private static final double DEVIATIONS_95 = 1.96;

    private LearnText() { }

    /** @param lowestHz where the instrument begins; what a control does below is of no use to it */
    public static List<String> lines(LearnedControl learned, double lowestHz, Sentences sentences) {
        return lines(learned, lowestHz, sentences, Setting::say);
    }

    /** @param position a control's position in the player's language */
    public static List<String> lines(LearnedControl learned, double lowestHz, Sentences sentences, Function<Setting, String> position) {
        LearnedControl.Curve reference = reference(learned);
        List<String> lines = new ArrayList<>();
        lines.add(sentences.say("learn.head", learned.control(), learned.how() == LearnedControl.How.SWEEP ? 1 : 0, position.apply(reference.at())));
        for (LearnedControl.Curve curve : learned.curves()) {
            if (curve != reference) {
                lines.add("  " + against(reference, curve, lowestHz, sentences, position));
            }
        }
        for (LearnedControl.Curve curve : learned.curves()) {
            curve.cleanUpToDbfs().ifPresent(dbfs -> lines.add("  " + sentences.say("learn.clean", position.apply(curve.at()), dbfs)));
        }
        return lines;
    }

    /** The position where it does least. */
    public static LearnedControl.Curve reference(LearnedControl learned) {
        return learned.curves().stream().min(Comparator.comparingDouble(curve -> amount(curve.at()))).orElseThrow();
    }

    private static String against(LearnedControl.Curve reference, LearnedControl.Curve curve, double lowestHz, Sentences sentences,
                                  Function<Setting, String> position) {
        int most = -1;
        double largest = -1;
        for (int i = 0; i < LearnedControl.FREQUENCIES_HZ.size(); i++) {
            double hz = LearnedControl.FREQUENCIES_HZ.get(i);
            double change = Math.abs(curve.levelDb().get(i) - reference.levelDb().get(i));
            if (hz >= lowestHz && hz <= HIGHEST_HZ && change > largest) {
                largest = change;
                most = i;
            }
        }
        double halfWidthDb = DEVIATIONS_95 * Math.hypot(curve.deviationDb().get(most), reference.deviationDb().get(most));
        return sentences.say(curve.at().control().shapesTone() ? "learn.at" : "learn.level", position.apply(curve.at()),
            curve.levelDb().get(most) - reference.levelDb().get(most), halfWidthDb, LearnedControl.FREQUENCIES_HZ.get(most));
    }

    private static double amount(Setting setting) {
        return !setting.on() ? -1 : setting.gain().isPresent() ? Math.abs(setting.gainDb()) : setting.frequencyHz();
    }
}
