package evenwood.wiring;

import evenwood.rig.CableRun;
import evenwood.rig.Connection;
import evenwood.rig.Line;
import evenwood.rig.Link;
import evenwood.rig.PluggedBox;
import evenwood.rig.PluggedInput;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.complex.Complex;

/**
 * Computes a connection: response, level, headroom and noise at every joint.
 *
 * <p>Levels: the pickup's own, changed by the chain's mean over the octaves from the instrument's lowest note to 4 kHz, where
 * plucked and bowed strings have nearly all their power (our choice).
 */
public final class ChainAnalysis {
    private static final double PLAYING_ENDS_HZ = 4000;
    /** The middle of the default target window, −12 to −6 dBTP. */
    private static final double WANTED_PEAK_DBFS = -9;
    private static final double MIDDLE_HZ = 1000;
    private static final double TREBLE_HZ = 10_000;

    private final Connection connection;
    private final double lowestHz;

    private ChainAnalysis(Connection connection, double lowestHz) {
        this.connection = connection;
        this.lowestHz = lowestHz;
    }

    public static ChainReport of(Connection connection, double lowestHz) {
        ChainAnalysis analysis = new ChainAnalysis(connection, lowestHz);
        WayReport main = analysis.way(connection.main(), false, 1);
        Optional<WayReport> thru = connection.thru().map(line -> analysis.way(line, true, main.joints().size() + 1));
        return new ChainReport(connection, lowestHz, main, thru);
    }

    private Circuit circuit(Line line, boolean onThru) {
        return onThru ? Circuit.thru(connection.pickup(), connection.main(), line) : Circuit.main(connection.pickup(), line, connection.thru());
    }

    private WayReport way(Line line, boolean onThru, int firstNumber) {
        Circuit circuit = circuit(line, onThru);
        List<List<Circuit.Point>> grid = new ArrayList<>();
        for (int point = 0; point < Response.points(); point++) {
            grid.add(circuit.at(Response.frequencyHz(point)));
        }
        List<JointReport> reports = new ArrayList<>();
        List<Joint> joints = joints(line, onThru, firstNumber);
        for (int i = 0; i < joints.size(); i++) {
            reports.add(report(circuit, grid, i, joints.get(i), line, onThru));
        }
        return ended(reports, line.input(), grid);
    }

    private static WayReport ended(List<JointReport> reports, PluggedInput input, List<List<Circuit.Point>> grid) {
        JointReport last = reports.get(reports.size() - 1);
        double wanted = input.input().fullScaleDbu() + WANTED_PEAK_DBFS - last.peakDbu();
        double suggested = input.input().gain().nearest(wanted);
        double gain = input.gainDb().orElse(suggested);
        Amplifier end = Amplifier.of(input, gain);
        double noise = dbu(Response.integral(point -> end.noiseBehind(grid.get(point).get(reports.size() - 1).noiseDensity(), Response.frequencyHz(point))));
        double toFullScale = gain - input.input().fullScaleDbu();
        return new WayReport(reports, input, gain, suggested, wanted - suggested, last.usualDbu() + toFullScale, last.peakDbu() + toFullScale,
            noise - input.input().fullScaleDbu());
    }

    private JointReport report(Circuit circuit, List<List<Circuit.Point>> grid, int place, Joint joint, Line line, boolean onThru) {
        Response response = Response.of(point -> levelDb(grid.get(point).get(place)));
        double mean = response.meanDb(Math.min(lowestHz, PLAYING_ENDS_HZ / 2), PLAYING_ENDS_HZ);
        double noise = dbu(Response.integral(point -> grid.get(point).get(place).noiseDensity()));
        Circuit.Point middle = circuit.at(MIDDLE_HZ).get(place);
        double peak = connection.pickup().peakDbu() + mean;
        OptionalDouble most = joint.to().maximumInputDbu();
        Circuit without = joint.cable().isEmpty() ? circuit : circuit(withoutCable(line, joint.cable().get()), onThru);
        double cableLevel = levelDb(without, place, MIDDLE_HZ) - levelDb(middle);
        double cableTreble = levelDb(without, place, TREBLE_HZ) - levelDb(circuit, place, TREBLE_HZ) - cableLevel;
        return new JointReport(joint, response, connection.pickup().usualDbu() + mean, peak,
            most.isEmpty() ? most : OptionalDouble.of(most.getAsDouble() - peak), noise, middle.sourceOhms().norm(), middle.loadOhms().norm(),
            loadingDb(middle), BassCorner.of(hz -> levelDb(circuit, place, hz), connection.pickup().seriesFarads().isPresent()),
            cableLevel, cableTreble);
    }

    private static double dbu(double squareVolts) {
        return Dbu.ofVolts(Math.sqrt(squareVolts));
    }

    private static double levelDb(Circuit.Point point) {
        return 10 * Math.log10(TwoPort.squared(point.gain()));
    }

    private static double levelDb(Circuit circuit, int place, double hz) {
        return levelDb(circuit.at(hz).get(place));
    }

    private static double loadingDb(Circuit.Point point) {
        Complex part = point.loadOhms().divide(point.loadOhms().add(point.sourceOhms()));
        return -10 * Math.log10(TwoPort.squared(part));
    }

    private static Line withoutCable(Line line, CableRun cable) {
        List<Link> links = line.links().stream().map(link -> link == cable ? new CableRun(cable.cable(), 0) : link).toList();
        return new Line(links, line.input());
    }

    private List<Joint> joints(Line line, boolean onThru, int firstNumber) {
        List<Joint> joints = new ArrayList<>();
        Device.Giving from = onThru ? beforeThru() : new Device.Source(connection.pickup());
        Optional<CableRun> cable = Optional.empty();
        for (Link link : line.links()) {
            if (link instanceof CableRun run) {
                cable = Optional.of(run);
            } else if (link instanceof PluggedBox plugged) {
                Device.Between between = new Device.Between(plugged);
                joints.add(new Joint(firstNumber + joints.size(), onThru, from, cable, between));
                from = between;
                cable = Optional.empty();
            }
        }
        joints.add(new Joint(firstNumber + joints.size(), onThru, from, cable, new Device.End(line.input())));
        return joints;
    }

    /** What feeds the box with the thru socket: the socket gives its signal on, unchanged. */
    private Device.Giving beforeThru() {
        Device.Giving from = new Device.Source(connection.pickup());
        for (PluggedBox plugged : connection.main().boxes()) {
            if (plugged.box().thru()) {
                break;
            }
            from = new Device.Between(plugged);
        }
        return from;
    }
}
