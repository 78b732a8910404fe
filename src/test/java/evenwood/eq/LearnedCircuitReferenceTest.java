package evenwood.eq;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.Needs;
import evenwood.measure.SineSweeps;
import evenwood.measure.SweepAnalysis;
import evenwood.rig.Control;
import evenwood.rig.LearnedControl;
import evenwood.rig.Presets;
import evenwood.rig.Setting;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A passive tone control (10 kΩ, then 22 nF through a pot to ground, 100 kΩ load), learned by sweeps, against what ngspice, a
 * general circuit simulator, says of it. Sound passes it here as its differential equation does, the input straight between
 * samples at 96 kHz; that is exact enough up to 16 kHz.
 */
class LearnedCircuitReferenceTest {
    private static final int RATE_HZ = 96_000;
    private static final double[] POSITIONS = {0, 5, 10};
    private static final double[] POT_OHMS = {2_000, 20_000, 100_000};
    private static final double SERIES_OHMS = 10_000;
    private static final double LOAD_OHMS = 100_000;
    private static final double FARADS = 22e-9;

    @TempDir
    Path folder;

    @Test
    void aTonePotIsLearnedWithinTwoTenthsOfADecibel() throws Exception {
        Needs.program("ngspice");
        Control treble = new Presets(Path.of("none")).controls("amp-bass-mid-treble").control("Treble").orElseThrow();
        List<ControlLearning.Swept> swept = new ArrayList<>();
        List<List<double[]>> simulated = new ArrayList<>();
        for (int i = 0; i < POSITIONS.length; i++) {
            swept.add(new ControlLearning.Swept(Setting.neutral(treble).withGain(POSITIONS[i]), SweepAnalysis.of(through(POT_OHMS[i]), RATE_HZ).orElseThrow()));
            simulated.add(simulate(POT_OHMS[i]));
        }
        LearnedControl learned = ControlLearning.ofSweeps(treble, swept);
        for (int i = 1; i < POSITIONS.length; i++) {
            for (int row = 0; row < simulated.get(0).size(); row++) {
                double hz = simulated.get(0).get(row)[0];
                double real = simulated.get(i).get(row)[1] - simulated.get(0).get(row)[1];
                assertThat(learned.curves().get(i).db(hz) - learned.curves().get(0).db(hz)).as("position %.0f, %.0f Hz", POSITIONS[i], hz).isCloseTo(real, within(0.2));
            }
        }
    }

    /** The voltage at the capacitor follows the source's through its resistance; exact for an input straight between samples. */
    private static float[] through(double potOhms) {
        float[] samples = SineSweeps.samples(RATE_HZ);
        double sourceOhms = SERIES_OHMS * LOAD_OHMS / (SERIES_OHMS + LOAD_OHMS);
        double steps = FARADS * (potOhms + sourceOhms) * RATE_HZ;
        double kept = Math.exp(-1 / steps);
        double mean = steps * (1 - kept);
        double capacitor = 0;
        double before = 0;
        for (int i = 0; i < samples.length; i++) {
            double source = samples[i] * LOAD_OHMS / (SERIES_OHMS + LOAD_OHMS);
            capacitor = kept * capacitor + (mean - kept) * before + (1 - mean) * source;
            samples[i] = (float) (capacitor + potOhms * (source - capacitor) / (potOhms + sourceOhms));
            before = source;
        }
        return samples;
    }

    private List<double[]> simulate(double potOhms) throws IOException, InterruptedException {
        Path file = Files.writeString(folder.resolve("tone.cir"), String.format(Locale.ROOT, """
            tone control
            Vs in 0 dc 0 ac 1
            R1 in out %g
            R2 out 0 %g
            Rp out mid %g
            C1 mid 0 %g
            .control
            set wr_singlescale
            ac dec 20 40 16000
            wrdata response.txt vdb(out)
            quit
            .endc
            .end
            """, SERIES_OHMS, LOAD_OHMS, potOhms, FARADS));
        Process process = new ProcessBuilder("ngspice", "-b", file.toString()).directory(folder.toFile()).redirectErrorStream(true).start();
        process.getInputStream().readAllBytes();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        List<double[]> rows = new ArrayList<>();
        for (String line : Files.readAllLines(folder.resolve("response.txt"))) {
            String[] words = line.strip().split("\\s+");
            rows.add(new double[] {Double.parseDouble(words[0]), Double.parseDouble(words[1])});
        }
        assertThat(rows).hasSizeGreaterThan(50);
        return rows;
    }
}
