package evenwood.wiring;

import evenwood.rig.CableRun;
import evenwood.rig.Line;
import evenwood.rig.Link;
import evenwood.rig.Pickup;
import evenwood.rig.PluggedBox;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.complex.Complex;

/**
 * One way from the pickup to an input, ready to be computed at any frequency.
 *
 * <p>How: sections of passive parts, each closed by an amplifier's input. Within a section the noise at a node is what comes
 * from before times the gain, and 4kT times the real part of the impedance at that node (Nyquist, for a passive network in
 * thermal equilibrium). Limits: resistors in inputs count as real ones; no current noise, no losses in a piezo
 * (CircuitReferenceTest holds it against a circuit simulator).
 */
final class Circuit {
    private final List<Section> sections;
    private final List<Node> nodes;
    private final double sourceNoise;

    private record Section(List<Part> parts, Amplifier end) { }

    /** A place where we look: behind so many parts of a section. */
    private record Node(int section, int parts) { }

    /**
     * What is so at one node and frequency.
     *
     * @param gain          voltage there for one volt of the pickup's own
     * @param noiseDensity  V²/Hz there
     * @param sourceOhms    impedance looking back
     * @param loadOhms      impedance looking on
     */
    record Point(Complex gain, double noiseDensity, Complex sourceOhms, Complex loadOhms) { }

    private Circuit(List<Section> sections, List<Node> nodes, double sourceNoise) {
        this.sections = sections;
        this.nodes = nodes;
        this.sourceNoise = sourceNoise;
    }

    /** The main line; the thru line hangs on the box that has the socket. */
    static Circuit main(Pickup pickup, Line line, Optional<Line> thru) {
        Builder builder = new Builder(pickup);
        builder.follow(line, thru.map(Circuit::felt));
        return builder.circuit();
    }

    /** The thru line, from the pickup to the socket as in the main line, which goes on loading it. */
    static Circuit thru(Pickup pickup, Line main, Line thru) {
        int at = main.links().indexOf(main.boxWithThru().orElseThrow());
        Builder builder = new Builder(pickup);
        builder.follow(main.links().subList(0, at));
        builder.current.add(felt(new Line(main.links().subList(at, main.links().size()), main.input())));
        builder.forgetNodes();
        builder.follow(thru, Optional.empty());
        return builder.circuit();
    }

    /** All points at one frequency, in the order of the joints. */
    List<Point> at(double hz) {
        List<Point> points = new ArrayList<>();
        Complex gain = Complex.ONE;
        double noise = sourceNoise;
        for (int i = 0; i < sections.size(); i++) {
            Section section = sections.get(i);
            Complex load = section.end.inputSiemens(hz);
            for (Node node : nodes) {
                if (node.section == i) {
                    points.add(point(section, node.parts, load, hz, gain, noise));
                }
            }
            Point end = point(section, section.parts.size(), load, hz, gain, noise);
            gain = end.gain.multiply(section.end.gainAt(hz));
            noise = section.end.noiseBehind(end.noiseDensity, hz);
        }
        return points;
    }

    private static Point point(Section section, int parts, Complex load, double hz, Complex gainBefore, double noiseBefore) {
        TwoPort before = product(section.parts.subList(0, parts), hz);
        Complex on = product(section.parts.subList(parts, section.parts.size()), hz).inputSiemens(load);
        Complex back = before.outputOhms();
        Complex gain = before.gain(on);
        Complex node = back.divide(back.multiply(on).add(1));
        return new Point(gainBefore.multiply(gain), noiseBefore * TwoPort.squared(gain) + NoiseDensity.thermal(node.getRealPart()), back, on.reciprocal());
    }

    private static TwoPort product(List<Part> parts, double hz) {
        TwoPort all = TwoPort.NOTHING;
        for (Part part : parts) {
            all = all.then(part.at(hz));
        }
        return all;
    }

    /** What a line is felt as where it is plugged in: a load across. */
    private static Part felt(Line line) {
        Builder builder = new Builder();
        builder.follow(line, Optional.empty());
        Section first = builder.sections.get(0);
        return hz -> TwoPort.shunt(product(first.parts, hz).inputSiemens(first.end.inputSiemens(hz)));
    }

    private static final class Builder {
        private final List<Section> sections = new ArrayList<>();
        private final List<Node> nodes = new ArrayList<>();
        private final double sourceNoise;
        private List<Part> current = new ArrayList<>();

        private Builder() {
            sourceNoise = 0;
        }

        private Builder(Pickup pickup) {
            sourceNoise = NoiseDensity.ofDbu(pickup.noiseDbu());
            current.add(Part.of(pickup));
        }

        private void follow(Line line, Optional<Part> atThru) {
            PluggedBox withThru = line.boxWithThru().orElse(null);
            for (Link link : line.links()) {
                if (link == withThru) {
                    nodes.add(new Node(sections.size(), current.size()));
                    atThru.ifPresent(current::add);
                    pass(withThru);
                } else {
                    follow(link);
                }
            }
            nodes.add(new Node(sections.size(), current.size()));
            close(Amplifier.of(line.input(), 0)); // its gain comes behind every place we look at
        }

        private void follow(List<Link> links) {
            links.forEach(this::follow);
        }

        private void follow(Link link) {
            if (link instanceof CableRun run) {
                current.add(Part.of(run));
            } else if (link instanceof PluggedBox plugged) {
                nodes.add(new Node(sections.size(), current.size()));
                pass(plugged);
            }
        }

        private void pass(PluggedBox plugged) {
            if (plugged.box().isPassive()) {
                current.add(Part.of(plugged));
            } else {
                Amplifier amplifier = Amplifier.of(plugged);
                close(amplifier);
                current.add(Part.ofOutput(amplifier.outputOhms()));
            }
        }

        private void close(Amplifier end) {
            sections.add(new Section(List.copyOf(current), end));
            current = new ArrayList<>();
        }

        private void forgetNodes() {
            nodes.clear();
        }

        private Circuit circuit() {
            return new Circuit(List.copyOf(sections), List.copyOf(nodes), sourceNoise);
        }
    }
}
