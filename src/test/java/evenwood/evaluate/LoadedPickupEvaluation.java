package evenwood.evaluate;

import evenwood.judge.Fault;
import evenwood.judge.Finding;
import evenwood.judge.Judge;
import evenwood.judge.Severity;
import evenwood.judge.TargetWindow;
import evenwood.judge.ToneComparison;
import evenwood.measure.TakeReadings;
import evenwood.rig.CableRun;
import evenwood.rig.Connection;
import evenwood.rig.Gear;
import evenwood.rig.Instrument;
import evenwood.rig.Line;
import evenwood.rig.PluggedInput;
import evenwood.rig.Presets;
import evenwood.rig.Tap;
import evenwood.sound.SoundFormat;
import evenwood.takes.Heard;
import evenwood.takes.PackagedTakes;
import evenwood.takes.Take;
import evenwood.targets.HeldOutTargets;
import evenwood.targets.SourceTone;
import evenwood.targets.TargetVoices;
import evenwood.wiring.ChainAnalysis;
import evenwood.wiring.ChainReport;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A pickup on too low an impedance, put into clean takes as the first-order high-pass it is, each beside a target made
 * without its own source; the rig says a disc on 1 MΩ, and not where the gain stands.
 *
 * <p>Asked: at most 2 % of clean takes called loaded clearly; of takes whose corner is well over the lowest note at least half.
 */
public final class LoadedPickupEvaluation implements Evaluation {
    private static final int RATE_HZ = Take.USUAL_SAMPLE_RATE_HZ;
    private static final SoundFormat FORMAT = new SoundFormat(RATE_HZ, 1, 1, 24);
    private static final int[] PHRASES = {0, 4};
    private static final double ROOM_DBFS = -85;
    private static final double[] CORNERS_HZ = {0, 1061, 3537};
    private static final double MOST_FALSE_ALARMS = 0.02;
    private static final double FEWEST_FOUND = 0.5;

    @Override
    public void run(PrintStream out) {
        Presets presets = new Presets(Path.of("nowhere"));
        Line line = new Line(List.of(new CableRun(presets.cable("instrument-cable"), 3)),
            new PluggedInput(presets.input("interface-instrument"), OptionalDouble.empty(), false));
        Connection connection = new Connection(presets.pickup("piezo-disc"), line, Optional.empty(), Optional.empty(), Gear.NOTHING);
        HeldOutTargets targets = new HeldOutTargets();
        Judge judge = new Judge(TargetWindow.DEFAULT);
        int[] named = new int[CORNERS_HZ.length];
        AtomicInteger takes = new AtomicInteger();
        for (TargetVoices voice : targets.voices()) {
            Instrument instrument = targets.without(voice);
            Optional<ChainReport> chain = Optional.of(ChainAnalysis.of(connection, instrument.lowestHz()));
            List<Take> phrases = SourceTone.phrases(voice);
            for (int phrase : PHRASES) {
                takes.incrementAndGet();
                float[] samples = PackagedTakes.samples(phrases.get(phrase).withRoom(ROOM_DBFS, phrase));
                for (int i = 0; i < CORNERS_HZ.length; i++) {
                    TakeReadings readings = Heard.readings(highPassed(samples, CORNERS_HZ[i]), FORMAT);
                    Optional<ToneComparison> tone = ToneComparison.withInstrument(readings, instrument, Tap.PICKUP);
                    named[i] += judge.judge(readings, tone, chain).findings().stream().anyMatch(LoadedPickupEvaluation::isClear) ? 1 : 0;
                }
            }
        }
        for (int i = 0; i < CORNERS_HZ.length; i++) {
            out.printf("corner %.0f Hz: called loaded clearly in %d of %d takes%n", CORNERS_HZ[i], named[i], takes.get());
        }
        if (named[0] > MOST_FALSE_ALARMS * takes.get() || named[1] < FEWEST_FOUND * takes.get() || named[2] < FEWEST_FOUND * takes.get()) {
            throw new AssertionError("loaded pickup: " + java.util.Arrays.toString(named) + " of " + takes.get());
        }
    }

    private static boolean isClear(Finding finding) {
        return finding.fault() == Fault.LOADED_PICKUP && finding.severity() != Severity.SLIGHT;
    }

    private static float[] highPassed(float[] samples, double cornerHz) {
        if (cornerHz == 0) {
            return samples;
        }
        // Bilinear, first order: at these corners and this rate within 0.1 dB of the analogue one up to 5 kHz.
        double k = Math.tan(Math.PI * cornerHz / RATE_HZ);
        float[] passed = new float[samples.length];
        double before = 0;
        double out = 0;
        for (int i = 0; i < samples.length; i++) {
            out = (samples[i] - before + (1 - k) * out) / (1 + k);
            before = samples[i];
            passed[i] = (float) out;
        }
        return passed;
    }
}
