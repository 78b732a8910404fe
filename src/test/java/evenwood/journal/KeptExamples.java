package evenwood.journal;

import evenwood.coach.Assessment;
import evenwood.coach.Coach;
import evenwood.coach.PeakForecast;
import evenwood.judge.TargetWindow;
import evenwood.judge.ToneComparison;
import evenwood.live.WholeTake;
import evenwood.measure.TakeReadings;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.sound.DemoPerformer;
import evenwood.sound.DemoScenario;
import evenwood.takes.ReadingsSketch;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/** Takes for tests of what is kept: one really measured, with everything a take can have, and quick sketches. */
public final class KeptExamples {
    public static final OffsetDateTime EVENING = OffsetDateTime.parse("2026-03-14T20:15:30.125+01:00");
    private static final String RIG = """
        name: My “old” mandolin
        instrument: octave-mandolin
        tap: mixer-direct-out
        controls: channel-strip
        wiring:
          pickup: piezo-bridge
          chain:
            - { cable: instrument-cable, metres: 3 }
            - { box: passive-di }
            - { cable: microphone-cable, metres: 20 }
          input: { id: mixer-microphone }
          owned: { boxes: [piezo-di] }
        """;

    private KeptExamples() { }

    public static Rig rig() {
        try {
            Path file = Files.createTempFile("rig", ".yaml");
            Files.writeString(file, RIG);
            Rig rig = Rig.read(file, new Presets(Path.of("none")));
            Files.delete(file);
            return rig;
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }

    /** The demo take in the kitchen: hum, overload, moves; measured once. */
    public static TakeToKeep measured() {
        return Measured.TAKE;
    }

    /** Made when first asked for, so that a child process that keeps sketches does not wait for it. */
    private static final class Measured {
        private static final TakeToKeep TAKE = measure();
    }

    private static TakeToKeep measure() {
        Rig rig = rig();
        TakeReadings readings = WholeTake.measure(new DemoPerformer(22_050, 1, DemoScenario.kitchen()), part -> { }).readings();
        Assessment assessment = new Coach(TargetWindow.DEFAULT).assess(readings, ToneComparison.withInstrument(readings, rig.instrument(), rig.tap()),
            Optional.empty(), PeakForecast.fromSpectrum(readings));
        return new TakeToKeep(EVENING, assessment, Optional.of(rig), new TakeWords("", "The Harp & Crown", "strings a week old", List.of("live", "Duo")));
    }

    public static Assessment assessment(ReadingsSketch sketch) {
        return new Coach(TargetWindow.DEFAULT).assess(sketch.readings());
    }

    public static TakeToKeep sketch(OffsetDateTime at, TakeWords words) {
        return new TakeToKeep(at, assessment(new ReadingsSketch()), Optional.empty(), words);
    }
}
