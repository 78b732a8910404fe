package evenwood.cli;

import evenwood.sound.DemoPerformer;
import evenwood.sound.DemoScenario;
import evenwood.sound.SoundFiles;
import evenwood.sound.SoundSource;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Which take a command is about: a file and one of its channels, or the demo take. */
final class TakeArgument {
    private static final int DEMO_SAMPLE_RATE_HZ = 48_000;
    private static final long DEMO_SEED = 1;
    private static final String DEMO_INSTRUMENT = "octave-mandolin";

    @Parameters(index = "0", arity = "0..1", paramLabel = "TAKE",
        description = "WAV, AIFF, FLAC, Ogg Vorbis or MP3; 8 to 192 kHz.")
    private String take;

    @Option(names = "--demo", description = "The demo take: an invented octave mandolin in a kitchen.")
    private boolean demo;

    @Option(names = "--channel", paramLabel = "N", defaultValue = "1", description = "Which channel to hear, counted from 1 (default: 1).")
    private int channel;

    /** The demo tells what it plays; a file does not. */
    Optional<String> knownInstrument() {
        return demo ? Optional.of(DEMO_INSTRUMENT) : Optional.empty();
    }

    /** Refuses none and both. */
    void mustBeNamed(String command) {
        if ((take == null) != demo) {
            throw new BadInput(command + ": name one take, or --demo; see evenwood " + command + " --help");
        }
    }

    boolean isDemo() {
        return demo;
    }

    /** Opens it at its start, as often as it takes. */
    SoundSource open() {
        return demo ? new DemoPerformer(DEMO_SAMPLE_RATE_HZ, DEMO_SEED, DemoScenario.kitchen()) : open(take, channel);
    }

    static SoundSource open(String take, int channel) {
        if (channel < 1) {
            throw new BadInput("open " + take + ": channel=" + channel + " was asked for, but channels are counted from 1");
        }
        if (take.isBlank()) {
            throw new BadInput("check: the name of the take is empty; name one file");
        }
        try {
            return SoundFiles.open(Path.of(take), channel);
        } catch (InvalidPathException problem) {
            throw new BadInput("check: " + take + " is no possible file name here; check the spelling and, for letters beyond a to z, the locale (LC_ALL=C.UTF-8)");
        }
    }
}
