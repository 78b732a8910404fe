package evenwood.wiring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.Needs;
import evenwood.rig.Connection;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole chains against ngspice, a general circuit simulator: response within 0.1 dB at every joint, noise within 0.5 dB. */
class CircuitReferenceTest {
    private static final double LOWEST_HZ = 82.4;
    private static final Pattern TOTAL = Pattern.compile("onoise_total\\s*=\\s*([-+0-9.eE]+)");

    @TempDir
    Path folder;

    @BeforeAll
    static void simulatorIsThere() {
        Needs.program("ngspice");
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "piezo-under-saddle > instrument-cable 3 > mixer-line gain=20",
        "piezo-bridge > instrument-cable 5 > interface-instrument gain=20",
        "piezo-bridge > instrument-cable 2 > piezo-di > microphone-cable 30 > mixer-microphone gain=20 phantom",
        "piezo-disc > instrument-cable 6 > passive-di > microphone-cable 20 > mixer-microphone gain=40",
        "piezo-film > instrument-cable 3 > active-di pad=20 > microphone-cable 10 > interface-microphone gain=30 phantom",
        "magnetic-single-coil > instrument-cable 6 > guitar-amp-instrument gain=20",
        "magnetic-double-coil > instrument-cable 5 > passive-di pad=20 > microphone-cable 50 > mixer-microphone gain=50",
        "magnetic-double-coil > low-capacitance-cable 10 > mixer-line gain=10",
        "active-under-saddle > instrument-cable 6 > passive-di > microphone-cable 100 > mixer-microphone gain=30",
        "active-under-saddle > instrument-cable 10 > acoustic-preamp gain=12 > balanced-jack-cable 20 > mixer-line gain=0",
        "piezo-under-saddle > instrument-cable 3 > acoustic-amp gain=20 > balanced-jack-cable 15 > isolation-transformer > microphone-cable 15 > interface-line gain=0",
        "piezo-under-saddle > instrument-cable 3 > acoustic-preamp gain=10 > microphone-cable 10 > inline-pad > microphone-cable 5 > mixer-microphone gain=10",
        "dynamic-microphone > microphone-cable 30 > mixer-microphone gain=50",
        "active-magnetic > instrument-cable 5 > amp-head gain=20 > speaker-cable 5 > speaker-cabinet",
        "piezo-bridge > instrument-cable 3 > active-di > microphone-cable 20 > mixer-microphone gain=20 phantom / instrument-cable 6 > amp-instrument gain=20",
        "magnetic-single-coil > instrument-cable 3 > passive-di > microphone-cable 20 > mixer-microphone gain=30 / instrument-cable 3 > guitar-amp-instrument gain=20",
        "piezo-disc > piezo-buffer > instrument-cable 8 > passive-di > microphone-cable 20 > mixer-microphone gain=30 / instrument-cable 3 > amp-line gain=0",
    })
    void aChainAgreesWithTheSimulator(String chain) throws Exception {
        Connection connection = Plugged.in(chain);
        ChainReport report = ChainAnalysis.of(connection, LOWEST_HZ);
        SpiceNetlist netlist = SpiceNetlist.of(connection, report.main().gainDb(), report.thru().map(WayReport::gainDb).orElse(0.0));
        String said = simulate(netlist);

        List<double[]> rows = rows();
        assertThat(rows).hasSizeGreaterThan(100);
        for (int j = 0; j < report.joints().size(); j++) {
            for (double[] row : rows) {
                assertThat(report.joints().get(j).response().atHz(row[0])).as("joint %d at %.0f Hz", j + 1, row[0])
                    .isCloseTo(row[2 * j + 1], within(0.1));
            }
        }
        List<Double> totals = totals(said);
        assertThat(totals).hasSize(report.joints().size() + 1);
        for (int j = 0; j < report.joints().size(); j++) {
            assertThat(report.joints().get(j).noiseDbu()).as("noise at joint %d", j + 1).isCloseTo(Dbu.ofVolts(totals.get(j)), within(0.5));
        }
        double fullScale = connection.main().input().input().fullScaleDbu();
        assertThat(report.main().noiseDbfs() + fullScale).as("noise behind the gain").isCloseTo(Dbu.ofVolts(totals.get(totals.size() - 1)), within(0.5));
    }

    private String simulate(SpiceNetlist netlist) throws IOException, InterruptedException {
        StringBuilder text = new StringBuilder(netlist.text()).append(".control\nset wr_singlescale\nac dec 50 20 20000\nwrdata response.txt");
        netlist.jointNodes().forEach(node -> text.append(" vdb(").append(node).append(')'));
        text.append('\n');
        List<String> noisy = new ArrayList<>(netlist.jointNodes());
        noisy.add(netlist.outputNode());
        for (String node : noisy) {
            text.append("noise v(").append(node).append(") Vs dec 50 20 20000\nprint onoise_total\n");
        }
        text.append("quit\n.endc\n.end\n");
        Path file = Files.writeString(folder.resolve("chain.cir"), text);
        Process process = new ProcessBuilder("ngspice", "-b", file.toString()).directory(folder.toFile()).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes());
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(folder.resolve("response.txt")).as(said).exists();
        return said;
    }

    /** Frequency, then one level a joint; the scale is written once. */
    private List<double[]> rows() throws IOException {
        List<double[]> rows = new ArrayList<>();
        for (String line : Files.readAllLines(folder.resolve("response.txt"))) {
            String[] cells = line.trim().split("\\s+");
            double[] row = new double[2 * cells.length];
            row[0] = Double.parseDouble(cells[0]);
            for (int i = 1; i < cells.length; i++) {
                row[2 * i - 1] = Double.parseDouble(cells[i]);
            }
            rows.add(row);
        }
        return rows;
    }

    private static List<Double> totals(String said) {
        List<Double> totals = new ArrayList<>();
        Matcher matcher = TOTAL.matcher(said);
        while (matcher.find()) {
            totals.add(Double.parseDouble(matcher.group(1)));
        }
        return totals;
    }
}
