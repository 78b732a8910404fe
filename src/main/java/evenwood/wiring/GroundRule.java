package evenwood.wiring;

import evenwood.rig.PluggedBox;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Whether two mains-earthed devices are joined a second time by the screens of audio cables.
 *
 * <p>How: along the main line, and from the thru line's end back to the socket and on along the main line, every stretch
 * between two earthed devices whose screens are not parted by a ground lift or an isolating transformer is a loop. Over
 * balanced joints its current adds to no signal. The cure is never the mains earth. Source: reference §7.8.
 */
final class GroundRule {
    private final ChainReport report;
    private final List<WiringVerdict> verdicts = new ArrayList<>();

    private GroundRule(ChainReport report) {
        this.report = report;
    }

    static List<WiringVerdict> verdicts(ChainReport report) {
        GroundRule rule = new GroundRule(report);
        rule.along(report.main(), Optional.empty());
        report.thru().ifPresent(way -> {
            rule.along(way, Optional.empty());
            rule.across(way);
        });
        return rule.verdicts;
    }

    /** One line from its first earthed device on. */
    private void along(WayReport way, Optional<Device> earthedBefore) {
        Optional<Device> earthed = earthedBefore;
        boolean balanced = true;
        for (JointReport each : way.joints()) {
            Joint joint = each.joint();
            if (earthed.isPresent() && joint.from() instanceof Device.Between between && parts(between.plugged())) {
                earthed = between.earthed() && !between.equals(earthed.get()) ? Optional.of(between) : Optional.empty();
            }
            balanced = balanced && joint.isBalanced();
            if (joint.to().earthed()) {
                if (earthed.isPresent() && !earthed.get().equals(joint.to())) {
                    loop(joint, earthed.get(), balanced);
                }
                earthed = Optional.of(joint.to());
                balanced = true;
            }
        }
    }

    /** From what the thru line feeds, back through the socket, to what the main line feeds. */
    private void across(WayReport thru) {
        Joint first = thru.joints().get(0).joint();
        Optional<Device> onThru = thru.joints().stream().map(each -> (Device) each.joint().to()).filter(Device::earthed).findFirst();
        PluggedBox splitter = report.connection().main().boxWithThru().orElseThrow();
        List<JointReport> main = report.main().joints();
        for (int i = 0; i < main.size(); i++) {
            Joint joint = main.get(i).joint();
            boolean behindSocket = joint.from() instanceof Device.Between between && between.plugged() == splitter;
            if (behindSocket && onThru.isPresent() && !parts(splitter)) {
                Optional<JointReport> next = main.subList(i, main.size()).stream().filter(each -> each.joint().to().earthed()).findFirst();
                next.ifPresent(each -> loop(each.joint(), onThru.get(), first.isBalanced()));
                return;
            }
        }
    }

    private void loop(Joint joint, Device other, boolean balanced) {
        boolean same = report.connection().sameOutlet().orElse(false);
        if (balanced && same) {
            return;
        }
        verdicts.add(WiringVerdict.of(WiringFault.GROUND_LOOP, balanced || same ? Fit.TOLERABLE : Fit.WRONG, joint, other.name(), joint.to().name()));
    }

    /** A lift parts the grounds of its two sides. */
    private static boolean parts(PluggedBox plugged) {
        return plugged.groundLift() && plugged.box().groundLift();
    }
}
