package evenwood.ui.model;

import evenwood.judge.Statement;
import evenwood.report.WiringWords;
import evenwood.rig.Connection;
import evenwood.wiring.ChainAnalysis;
import evenwood.wiring.ChainReport;
import evenwood.wiring.Device;
import evenwood.wiring.Fit;
import evenwood.wiring.JointReport;
import evenwood.wiring.WayReport;
import evenwood.wiring.WiringRules;
import evenwood.wiring.WiringVerdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The chain to be drawn: what is plugged into what, and how each joint fits.
 *
 * @param ways     the way to the input, then the one from a thru socket
 * @param verdict  the whole in one sentence
 * @param worst    how well it fits on the whole
 * @param report   what it was made from
 * @param verdicts what is wrong, worst first
 */
public record ChainPicture(List<Way> ways, String verdict, Fit worst, ChainReport report, List<WiringVerdict> verdicts) {
    /** Things and the joints between them; one joint less than things. */
    public record Way(List<Thing> things, List<Joint> joints) { }

    /** @param standing how its knobs and switches stand, a line each  @param box its place among the boxes; −1 for pickup, input and a thru line */
    public record Thing(String name, List<String> standing, Kind kind, int box) { }

    /** What a thing is, told by its outline. */
    public enum Kind { PICKUP, BOX, THRU, INPUT }

    /**
     * @param number from 1
     * @param fit    how well both suit each other
     * @param word   the same in words
     * @param cable  what carries the signal
     * @param level  how loud usual playing is there
     */
    public record Joint(int number, Fit fit, String word, String cable, String level) { }

    public static ChainPicture of(Connection connection, double lowestHz, Words words) {
        ChainReport report = ChainAnalysis.of(connection, lowestHz);
        List<WiringVerdict> verdicts = WiringRules.verdicts(report);
        List<Way> ways = new ArrayList<>();
        for (WayReport way : report.ways()) {
            Device first = ways.isEmpty() ? way.joints().get(0).joint().from() : new Device.Between(connection.main().boxWithThru().orElseThrow());
            ways.add(way(way, first, verdicts, words));
        }
        Fit worst = WiringRules.worst(verdicts);
        long amiss = report.joints().stream().filter(each -> WiringRules.worstAt(verdicts, each.joint()) != Fit.RIGHT).count();
        return new ChainPicture(List.copyOf(ways), words.say("wiring.whole." + id(worst), amiss), worst, report, verdicts);
    }

    private static Way way(WayReport way, Device first, List<WiringVerdict> verdicts, Words words) {
        GearNames names = new GearNames(words);
        List<Thing> things = new ArrayList<>();
        List<Joint> joints = new ArrayList<>();
        boolean main = first instanceof Device.Source;
        things.add(main ? new Thing(titled(names.of(first)), List.of(), Kind.PICKUP, -1)
            : new Thing(words.say("wiring.thru", names.of(first)), List.of(), Kind.THRU, -1));
        for (JointReport report : way.joints()) {
            Fit fit = WiringRules.worstAt(verdicts, report.joint());
            joints.add(new Joint(report.joint().number(), fit, words.say("wiring.fit." + id(fit)),
                report.joint().cable().map(names::of).orElse(words.say("wiring.no-cable")), words.say("wiring.usually", dbu(report.usualDbu(), words))));
            Device to = report.joint().to();
            boolean box = to instanceof Device.Between;
            things.add(new Thing(titled(names.of(to)), names.standing(to), box ? Kind.BOX : Kind.INPUT, box && main ? things.size() - 1 : -1));
        }
        return new Way(List.copyOf(things), List.copyOf(joints));
    }

    /** With a capital, to begin a line with. */
    public static String titled(String name) {
        return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    }

    /** One thing to say about a joint. */
    public record Say(Fit fit, String evidence, String cure) { }

    public List<Say> said(int joint, Words words) {
        GearNames names = new GearNames(words);
        return verdicts.stream().filter(each -> each.joint() == joint).map(each -> new Say(each.fit(), sentence(WiringWords.evidence(each), names, words),
            sentence(WiringWords.cure(each), names, words))).toList();
    }

    private String sentence(Statement statement, GearNames names, Words words) {
        return words.say("move.why", words.say(names.named(statement, report.connection())));
    }

    public JointReport joint(int number) {
        return report.joints().stream().filter(each -> each.joint().number() == number).findFirst().orElseThrow();
    }

    public int joints() {
        return report.joints().size();
    }

    /** The joint most needs to be said about; the first when all fit. */
    public int firstToRead() {
        return verdicts.isEmpty() ? 1 : verdicts.get(0).joint();
    }

    /** "From … into …". */
    public String title(int number, Words words) {
        GearNames names = new GearNames(words);
        return words.say("wiring.joint", number, names.of(joint(number).joint().from()), names.of(joint(number).joint().to()));
    }

    /** What is so at a joint: name of the figure, the figure with its unit. */
    public List<List<String>> figures(int number, Words words) {
        JointReport at = joint(number);
        List<List<String>> lines = new ArrayList<>();
        lines.add(List.of(words.say("wiring.figure.usual"), dbu(at.usualDbu(), words)));
        lines.add(List.of(words.say("wiring.figure.peak"), dbu(at.peakDbu(), words)));
        at.headroomDb().ifPresent(db -> lines.add(List.of(words.say("wiring.figure.room"), words.say("number.with-unit", words.number(db, 0), words.say("unit.db")))));
        lines.add(List.of(words.say("wiring.figure.noise"), words.say("wiring.under", words.number(at.signalToNoiseDb(), 0))));
        lines.add(List.of(words.say("wiring.figure.impedance"), words.say("wiring.into", ohms(at.sourceOhms(), words), ohms(at.loadOhms(), words))));
        lines.add(List.of(words.say("wiring.figure.bass"), at.bassCornerHz().isPresent() && at.bassCornerHz().getAsDouble() >= 20
            ? words.frequency(at.bassCornerHz().getAsDouble()) : words.say("wiring.under-20")));
        if (at.joint().cable().isPresent()) {
            lines.add(List.of(words.say("wiring.figure.cable"), words.say("wiring.cable-takes", words.number(at.cableLevelDb(), 1), words.number(at.cableTrebleDb(), 1))));
        }
        return lines;
    }

    private static String dbu(double dbu, Words words) {
        return words.say("number.with-unit", words.number(dbu, 0), words.say("unit.dbu"));
    }

    private static String ohms(double ohms, Words words) {
        double rounded = new java.math.BigDecimal(ohms).round(new java.math.MathContext(2)).doubleValue();
        return rounded < 1000 ? words.say("number.with-unit", words.shortNumber(rounded, 1), words.say("unit.ohm"))
            : rounded < 1e6 ? words.say("number.with-unit", words.shortNumber(rounded / 1000, 1), words.say("unit.kilohm"))
            : words.say("number.with-unit", words.shortNumber(rounded / 1e6, 1), words.say("unit.megohm"));
    }

    static String id(Fit fit) {
        return fit.name().toLowerCase(Locale.ROOT);
    }
}
