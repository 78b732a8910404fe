package evenwood.wiring;

import evenwood.rig.Box;
import evenwood.rig.Pickup;
import evenwood.rig.Power;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether whatever needs power has it, and whether phantom power reaches only what takes it.
 *
 * <p>Source: {@link PhantomFeed}; what phantom power may harm is common practice (reference §7.6): an unbalanced plug shorts one
 * leg, a ribbon may be torn, an electronic output gets a current it was not made for; a transformer blocks it and a dynamic
 * microphone does not mind.
 */
final class PhantomRule {
    private final WayReport way;
    private final List<WiringVerdict> verdicts = new ArrayList<>();

    private PhantomRule(WayReport way) {
        this.way = way;
    }

    static List<WiringVerdict> verdicts(WayReport way) {
        PhantomRule rule = new PhantomRule(way);
        boolean reached = true;
        // From the input backwards: phantom power goes on through pads and stops at everything else.
        for (int i = way.joints().size() - 1; i >= 0; i--) {
            Joint joint = way.joints().get(i).joint();
            boolean balancedSoFar = rule.balancedFrom(i);
            rule.power(joint, reached, balancedSoFar);
            if (reached && way.input().phantom()) {
                rule.unwanted(joint, balancedSoFar);
            }
            reached = reached && joint.from() instanceof Device.Between between && between.box().kind() == Box.Kind.PAD;
        }
        return rule.verdicts;
    }

    private boolean balancedFrom(int first) {
        return way.joints().subList(first, way.joints().size()).stream().map(JointReport::joint).allMatch(Joint::isBalanced);
    }

    private void power(Joint joint, boolean reached, boolean balanced) {
        if (joint.onThru() && way.joints().get(0).joint() == joint) {
            return; // what feeds the thru line is judged on the main line
        }
        if (joint.from() instanceof Device.Between between) {
            if (between.starved()) {
                verdicts.add(WiringVerdict.of(WiringFault.POWER_MISSING, Fit.WRONG, joint, between.name(), between.box().power().takesPhantom() ? 1 : 0));
            } else if (between.plugged().powered() == Power.PHANTOM) {
                needs(joint, reached, balanced, between.box().phantomMilliamperes(), between.box().phantomLeastVolts(),
                    between.plugged().groundLift() && !between.box().liftKeepsPhantom());
            }
        } else if (joint.from() instanceof Device.Source source && source.pickup().power() == Power.PHANTOM) {
            needs(joint, reached, balanced, source.pickup().phantomMilliamperes(), 0, false);
        }
    }

    private void needs(Joint joint, boolean reached, boolean balanced, double milliamperes, double leastVolts, boolean cutByLift) {
        String name = joint.from().name();
        if (!reached || way.input().input().phantomVolts() == 0) {
            verdicts.add(WiringVerdict.of(WiringFault.PHANTOM_MISSING, Fit.WRONG, joint, name, 0));
        } else if (!way.input().phantom()) {
            verdicts.add(WiringVerdict.of(WiringFault.PHANTOM_MISSING, Fit.WRONG, joint, name, 1));
        } else if (!balanced) {
            verdicts.add(WiringVerdict.of(WiringFault.PHANTOM_BLOCKED, Fit.WRONG, joint, name));
        } else if (cutByLift) {
            verdicts.add(WiringVerdict.of(WiringFault.PHANTOM_CUT_BY_LIFT, Fit.WRONG, joint, name));
        } else if (PhantomFeed.ofVolts(way.input().input().phantomVolts()).voltsLeft(milliamperes) < leastVolts) {
            verdicts.add(WiringVerdict.of(WiringFault.PHANTOM_WEAK, Fit.WRONG, joint, name,
                PhantomFeed.ofVolts(way.input().input().phantomVolts()).voltsLeft(milliamperes), leastVolts));
        }
    }

    private void unwanted(Joint joint, boolean balanced) {
        boolean pad = joint.from() instanceof Device.Between between && between.box().kind() == Box.Kind.PAD;
        if (joint.from() instanceof Device.Source source && source.pickup().kind() == Pickup.Kind.RIBBON_MICROPHONE) {
            verdicts.add(WiringVerdict.of(WiringFault.PHANTOM_ON_RIBBON, Fit.DANGER, joint));
        } else if (!balanced) {
            verdicts.add(WiringVerdict.of(WiringFault.PHANTOM_UNWANTED, Fit.WRONG, joint, joint.from().name(),
                PhantomFeed.ofVolts(way.input().input().phantomVolts()).milliamperesShorted()));
        } else if (!pad && !standsPhantom(joint.from())) {
            verdicts.add(WiringVerdict.of(WiringFault.PHANTOM_INTO_OUTPUT, Fit.TOLERABLE, joint, joint.from().name()));
        }
    }

    private static boolean standsPhantom(Device.Giving from) {
        if (from instanceof Device.Source source) {
            return source.pickup().kind().isMicrophone();
        }
        Box box = ((Device.Between) from).box();
        return box.isPassive() || box.power().takesPhantom() || box.phantomProof();
    }
}
