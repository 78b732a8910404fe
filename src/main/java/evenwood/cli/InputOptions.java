package evenwood.cli;

import evenwood.sound.LineOpener;
import evenwood.sound.LiveInputs;
import picocli.CommandLine.Option;

/** Which input is listened to. */
final class InputOptions {
    @Option(names = "--input", paramLabel = "NAME", description = "Which input, by its name or a part of it (default: the system's first).")
    private String input;

    @Option(names = "--channel", paramLabel = "N", defaultValue = "1", description = "Which channel of it, counted from 1 (default: 1).")
    private int channel;

    /** @throws evenwood.sound.SoundProblem when there is no such input */
    LineOpener opener() {
        return LiveInputs.opener(LiveInputs.choose(input), channel);
    }

    int channel() {
        return channel;
    }
}
