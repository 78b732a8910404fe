package evenwood.wiring;

import evenwood.rig.Box;
import evenwood.rig.CableRun;
import evenwood.rig.Connection;
import evenwood.rig.Line;
import evenwood.rig.Link;
import evenwood.rig.Pickup;
import evenwood.rig.PluggedBox;
import evenwood.rig.PluggedInput;
import evenwood.rig.Transformer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A connection as a netlist for a general circuit simulator: resistors, coils, capacitors, coupled coils for transformers and
 * ideal amplifiers whose noise is that of resistors. Written without the program's own circuit arithmetic.
 */
final class SpiceNetlist {
    private static final double FOUR_K_T = 4 * 1.380649e-23 * 293.15;
    private static final double BAND_HZ = 19_980;

    private final StringBuilder text = new StringBuilder("chain\n.options temp=20 tnom=20 reltol=1e-6\n");
    private final List<String> jointNodes = new ArrayList<>();
    private String node = "emf";
    private String thruNode = "";
    private int count;

    static SpiceNetlist of(Connection connection, double mainGainDb, double thruGainDb) {
        SpiceNetlist list = new SpiceNetlist();
        list.pickup(connection.pickup());
        list.line(connection.main(), mainGainDb);
        connection.thru().ifPresent(line -> {
            list.node = list.thruNode;
            list.line(line, thruGainDb);
        });
        return list;
    }

    /** The circuit alone, without analyses. */
    String text() {
        return text.toString();
    }

    /** In the order of the joints; an input's is followed by no other of its line. */
    List<String> jointNodes() {
        return jointNodes;
    }

    /** Behind the main input's gain. */
    String outputNode() {
        return "out1";
    }

    private void pickup(Pickup pickup) {
        add("Vs s0 0 dc 0 ac 1");
        double noise = Double.isInfinite(pickup.noiseDbu()) ? 0 : Math.pow(volts(pickup.noiseDbu()), 2) / BAND_HZ;
        amplifier("s0", "emf", 1, noise);
        seriesR(Math.max(1e-6, pickup.seriesOhms()));
        if (pickup.seriesHenries() > 0) {
            String next = fresh();
            add("L%d %s %s %.9g", count, node, next, pickup.seriesHenries());
            node = next;
        }
        if (pickup.seriesFarads().isPresent()) {
            String next = fresh();
            add("C%d %s %s %.9g", count, node, next, pickup.seriesFarads().getAsDouble());
            add("Rleak%d %s 0 1e15", count, next);
            node = next;
        }
        shuntC(pickup.parallelFarads());
        pickup.parallelOhms().ifPresent(this::shuntR);
    }

    private void line(Line line, double inputGainDb) {
        PluggedBox thru = line.boxWithThru().orElse(null);
        for (Link link : line.links()) {
            if (link instanceof CableRun run) {
                cable(run);
            } else if (link instanceof PluggedBox plugged) {
                jointNodes.add(node);
                if (plugged == thru) {
                    thruNode = node;
                }
                box(plugged);
            }
        }
        jointNodes.add(node);
        input(line.input(), inputGainDb);
    }

    private void cable(CableRun run) {
        double metres = run.metres();
        int pieces = 8; // finer than the program's one lump
        for (int i = 0; i < pieces && metres > 0; i++) {
            seriesR(run.cable().ohmsPerMetre() * metres / pieces);
            if (run.cable().henriesPerMetre() > 0) {
                String next = fresh();
                add("L%d %s %s %.9g", count, node, next, run.cable().henriesPerMetre() * metres / pieces);
                node = next;
            }
            shuntC(run.cable().faradsPerMetre() * metres / pieces);
        }
    }

    private void box(PluggedBox plugged) {
        Box box = plugged.box();
        shuntC(box.inputFarads());
        if (!box.isPassive()) {
            shuntR(box.inputOhms());
            String behindPad = fresh();
            amplifier(node, behindPad, Math.pow(10, -plugged.padDb() / 20), Math.pow(box.noiseNanovolts() * 1e-9, 2));
            String passed = behindPad;
            if (box.lowestHz() > 0) {
                passed = fresh();
                add("Chp%d %s %s 1", count, behindPad, passed); // so large that its resistor is quiet
                add("Rhp%d %s 0 %.9g", count, passed, 1 / (2 * Math.PI * box.lowestHz()));
            }
            String out = fresh();
            amplifier(passed, out, Math.pow(10, plugged.gainDb() / 20), density(box.outputNoiseDbu()));
            node = out;
            seriesR(box.outputOhms());
            return;
        }
        if (plugged.padDb() > 0) {
            double ratio = Math.pow(10, plugged.padDb() / 20);
            seriesR(22_000 * (ratio - 1));
            shuntR(22_000);
        }
        if (box.padShuntOhms() > 0) {
            seriesR(box.padSeriesOhms());
            shuntR(box.padShuntOhms());
        }
        box.transformer().ifPresent(this::transformer);
    }

    private void transformer(Transformer transformer) {
        seriesR(transformer.primaryOhms());
        String secondary = fresh();
        int n = count;
        add("Lp%d %s 0 %.12g", n, node, transformer.primaryHenries());
        add("Ls%d %s 0 %.12g", n, secondary, transformer.primaryHenries() / (transformer.ratio() * transformer.ratio()));
        add("K%d Lp%d Ls%d 0.999999999", n, n, n);
        node = secondary;
        seriesR(transformer.secondaryOhms());
    }

    private void input(PluggedInput plugged, double gainDb) {
        shuntR(plugged.input().inputOhms());
        shuntC(plugged.input().inputFarads());
        double own = plugged.input().einDbu().isEmpty() ? 0
            : density(plugged.input().einDbu().getAsDouble()) - FOUR_K_T * plugged.input().einSourceOhms();
        String quiet = fresh();
        amplifier(node, quiet, 1, own);
        String out = text.indexOf(" out1 ") < 0 ? "out1" : "out2";
        amplifier(quiet, out, Math.pow(10, gainDb / 20), density(plugged.input().outputNoiseDbu()));
    }

    /** Behind the gain stands the noise of a resistor that carries no current. With gain 1 that is input noise. */
    private void amplifier(String from, String to, double gain, double addedDensity) {
        count++;
        if (addedDensity > 0) {
            add("Rn%d nn%d 0 %.9g", count, count, addedDensity / FOUR_K_T);
            add("E%d %s 0 value={%.12g*v(%s)+v(nn%d)}", count, to, gain, from, count);
        } else {
            add("E%d %s 0 %s 0 %.12g", count, to, from, gain);
        }
    }

    private void seriesR(double ohms) {
        if (ohms > 0) {
            String next = fresh();
            add("R%d %s %s %.9g", count, node, next, ohms);
            node = next;
        }
    }

    private void shuntR(double ohms) {
        count++;
        add("R%d %s 0 %.9g", count, node, ohms);
    }

    private void shuntC(double farads) {
        if (farads > 0) {
            count++;
            add("C%d %s 0 %.9g", count, node, farads);
        }
    }

    private String fresh() {
        count++;
        return "n" + count;
    }

    private void add(String form, Object... values) {
        text.append(String.format(Locale.ROOT, form, values)).append('\n');
    }

    private static double density(double dbu) {
        return Double.isInfinite(dbu) ? 0 : Math.pow(volts(dbu), 2) / BAND_HZ;
    }

    private static double volts(double dbu) {
        return 0.7745966692414834 * Math.pow(10, dbu / 20);
    }
}
