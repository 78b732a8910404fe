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
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * A pickup on too low an impedance, put into clean takes as the first-order high-pass it is, each beside a target made
 * without its own source; with a rig that says a disc on 1 MΩ and where the gain stands (the level then scatters about the prediction as pickups and players
 * do), with one that does not say the gain, and with no rig at all.
 *
 * <p>Asked: at most 2 % of clean takes called loaded clearly, whatever is known.
 */
public final class LoadedPickupEvaluation implements Evaluation {
    private static final Presets PRESETS = new Presets(Path.of("nowhere"));
    private static final int RATE_HZ = Take.USUAL_SAMPLE_RATE_HZ;
    private static final SoundFormat FORMAT = new SoundFormat(RATE_HZ, 1, 1, 24);
    private static final int[] PHRASES = {0, 4};
    private static final double ROOM_DBFS = -85;
    private static final double[] CORNERS_HZ = {0, 1061, 3537};
    private static final double MOST_FALSE_ALARMS = 0.02;
    /** Piezo disc's spread and who plays and how, as in WiringComparison. */
    private static final double LEVEL_DEVIATION_DB = Math.hypot(6, 3);

    private enum Known { GAIN, CHAIN, NOTHING }

    @Override
    public void run(PrintStream out) {
        HeldOutTargets targets = new HeldOutTargets();
        Judge judge = new Judge(TargetWindow.DEFAULT);
        SplittableRandom random = new SplittableRandom(7);
        int[][] clear = new int[CORNERS_HZ.length][Known.values().length];
        int[][] named = new int[CORNERS_HZ.length][Known.values().length];
        int takes = 0;
        for (TargetVoices voice : targets.voices()) {
            Instrument instrument = targets.without(voice);
            List<Take> phrases = SourceTone.phrases(voice);
            for (int phrase : PHRASES) {
                takes++;
                float[] samples = PackagedTakes.samples(phrases.get(phrase).withRoom(ROOM_DBFS, phrase));
                double cleanDbfs = 0;
                double scatterDb = LEVEL_DEVIATION_DB * random.nextGaussian();
                for (int i = 0; i < CORNERS_HZ.length; i++) {
                    TakeReadings readings = Heard.readings(highPassed(samples, CORNERS_HZ[i]), FORMAT);
                    cleanDbfs = CORNERS_HZ[i] == 0 ? readings.playingDbfs() : cleanDbfs;
                    Optional<ToneComparison> tone = ToneComparison.withInstrument(readings, instrument, Tap.PICKUP);
                    for (Known known : Known.values()) {
                        Optional<Finding> loaded = judge.judge(readings, tone, chain(known, instrument.lowestHz(), cleanDbfs + scatterDb), Optional.empty()).findings().stream()
                            .filter(finding -> finding.fault() == Fault.LOADED_PICKUP).findFirst();
                        named[i][known.ordinal()] += loaded.isPresent() ? 1 : 0;
                        clear[i][known.ordinal()] += loaded.filter(finding -> finding.severity() != Severity.SLIGHT).isPresent() ? 1 : 0;
                    }
                }
            }
        }
        out.printf("| corner | gain known: clear / named | chain known | nothing known |%n|---|---|---|---|%n");
        for (int i = 0; i < CORNERS_HZ.length; i++) {
            out.printf("| %s | %d / %d | %d / %d | %d / %d |%n", CORNERS_HZ[i] == 0 ? "none" : Math.round(CORNERS_HZ[i]) + " Hz",
                clear[i][0], named[i][0], clear[i][1], named[i][1], clear[i][2], named[i][2]);
        }
        out.printf("of %d takes%n", takes);
        if (Arrays.stream(clear[0]).max().orElseThrow() > MOST_FALSE_ALARMS * takes) {
            throw new AssertionError("loaded pickup: " + Arrays.toString(clear[0]) + " of " + takes + " clean takes called loaded clearly");
        }
    }

    /** @param usualDbfs what the chain predicts where its gain is known */
    private static Optional<ChainReport> chain(Known known, double lowestHz, double usualDbfs) {
        if (known == Known.NOTHING) {
            return Optional.empty();
        }
        ChainReport atNought = ChainAnalysis.of(connection(OptionalDouble.of(0)), lowestHz);
        double gainDb = usualDbfs - atNought.main().usualDbfs();
        return Optional.of(ChainAnalysis.of(connection(known == Known.GAIN ? OptionalDouble.of(gainDb) : OptionalDouble.empty()), lowestHz));
    }

    private static Connection connection(OptionalDouble gainDb) {
        Line line = new Line(List.of(new CableRun(PRESETS.cable("instrument-cable"), 3)), new PluggedInput(PRESETS.input("interface-instrument"), gainDb, false));
        return new Connection(PRESETS.pickup("piezo-disc"), line, Optional.empty(), Optional.empty(), Gear.NOTHING);
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
