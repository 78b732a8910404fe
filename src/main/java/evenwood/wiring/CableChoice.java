package evenwood.wiring;

import evenwood.rig.Cable;
import evenwood.rig.CableRun;
import evenwood.rig.Line;
import evenwood.rig.Link;
import evenwood.rig.SignalKind;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Picks a fitting cable for each joint of a new line, over the same distance as the old one. */
final class CableChoice {
    /** Nobody's instrument lead is shorter than this, and nothing is gained by a longer one. Our choice. */
    private static final double LEAD_METRES = 3;
    private static final double PATCH_METRES = 2;

    private final List<Cable> atHand;
    private final List<Cable> shop;
    private final List<Double> metres;

    CableChoice(List<Cable> atHand, List<Cable> shop, Line old) {
        this.atHand = atHand;
        this.shop = shop;
        metres = old.links().stream().filter(CableRun.class::isInstance).map(link -> ((CableRun) link).metres()).toList();
    }

    boolean isAtHand(Cable cable) {
        return atHand.stream().anyMatch(each -> each.id().equals(cable.id()));
    }

    /** The run for one joint of so many, counted from 0. */
    CableRun run(SignalKind output, boolean bothBalanced, boolean intoMicrophoneSocket, int joint, int joints) {
        return new CableRun(cable(output, bothBalanced, intoMicrophoneSocket), length(joint, joints));
    }

    private Cable cable(SignalKind output, boolean bothBalanced, boolean intoMicrophoneSocket) {
        return fitting(atHand, output, bothBalanced, intoMicrophoneSocket).or(() -> fitting(shop, output, bothBalanced, intoMicrophoneSocket))
            .orElseThrow(() -> new IllegalStateException("cables: the presets hold none for " + output));
    }

    private static Optional<Cable> fitting(List<Cable> cables, SignalKind output, boolean bothBalanced, boolean intoMicrophoneSocket) {
        if (output == SignalKind.SPEAKER) {
            return cables.stream().filter(cable -> cable.made() == Cable.Made.SPEAKER).findFirst();
        }
        if (bothBalanced) {
            return cables.stream().filter(Cable::balanced).findFirst();
        }
        // Into a microphone socket an unbalanced signal needs the cable with that plug, and nowhere else.
        return cables.stream().filter(cable -> cable.shielded() && !cable.balanced() && cable.microphonePlug() == intoMicrophoneSocket)
            .max(Comparator.comparingDouble(Cable::longestHighImpedanceMetres));
    }

    private double length(int joint, int joints) {
        double whole = metres.stream().mapToDouble(Double::doubleValue).sum();
        if (joints == 1) {
            return whole;
        }
        if (joint > 0 && joint < joints - 1) {
            return PATCH_METRES;
        }
        double lead = metres.size() > 1 ? metres.get(0) : Math.min(LEAD_METRES, whole);
        return joint == 0 ? lead : Math.max(PATCH_METRES, whole - lead);
    }
}
