package evenwood;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * A sound server of the test's own, without a sound card ({@code .ci/virtual-sound} says which inputs it has).
 *
 * <p>Java Sound reads the environment when it starts, so whatever listens runs in a child JVM: {@link #java}.
 */
public final class VirtualSound implements AutoCloseable {
    private static final Path SCRIPT = Path.of(".ci", "virtual-sound");

    private final Path folder;
    private final Map<String, String> environment = new HashMap<>();
    private final List<Process> started = new ArrayList<>();

    private VirtualSound(Path folder) {
        this.folder = folder;
    }

    /** Skips the test where the machine lacks what it needs. */
    public static VirtualSound start(Path folder) {
        Needs.program("bash");
        Needs.program("pulseaudio");
        Needs.program("pactl");
        Needs.program("paplay");
        Needs.require(pluginThere(), "needs ALSA's pulse plugin (libasound2-plugins)");
        VirtualSound sound = new VirtualSound(folder);
        sound.startAgain();
        return sound;
    }

    /** The server and all its inputs are gone at once, as when a plug is pulled. */
    public void kill() {
        script("stop");
    }

    public void startAgain() {
        for (String line : script("start")) {
            String[] parts = line.split("=", 2);
            environment.put(parts[0], parts[1]);
        }
    }

    /** What the default input hears in programs started from now on: guitar (2 channels), violin (1) or desk (4). */
    public VirtualSound hearing(String sink) {
        environment.put("PULSE_SOURCE", sink + ".monitor");
        return this;
    }

    /** Plays a file to one of the inputs; the process ends when it was heard. */
    public Process play(Path file, String sink) {
        List<String> command = new ArrayList<>(List.of("paplay", "--device=" + sink, file.toString()));
        if (sink.equals("desk")) {
            // A plain four-channel file does not say which speaker is which.
            command.add(1, "--channel-map=front-left,front-right,rear-left,rear-right");
        }
        return run(command, ProcessBuilder.Redirect.DISCARD);
    }

    /** Runs a main class of the test class path with this server as its sound; its error output goes to the test's own. */
    public Process java(Class<?> main, String... arguments) {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Djava.awt.headless=true", "-cp", System.getProperty("java.class.path"), main.getName()));
        command.addAll(Arrays.asList(arguments));
        return run(command, ProcessBuilder.Redirect.PIPE);
    }

    /** Keeps what arrives at one of the outputs, as 24-bit WAV, until the process is ended. */
    public Process record(Path file, String sink) {
        return run(List.of("parec", "--device=" + sink + ".monitor", "--file-format=wav", "--format=s24le", "--rate=48000", "--channels=1",
            "--latency-msec=20", file.toString()), ProcessBuilder.Redirect.DISCARD);
    }

    private Process run(List<String> command, ProcessBuilder.Redirect output) {
        ProcessBuilder builder = new ProcessBuilder(command).redirectOutput(output).redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment().putAll(environment);
        try {
            Process process = builder.start();
            started.add(process);
            return process;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Lines the script prints; to a file, because the server it leaves behind would keep a pipe open. */
    private List<String> script(String what) {
        try {
            Path said = Files.createTempFile(folder, "said", ".txt");
            Process process = new ProcessBuilder("bash", SCRIPT.toString(), what, folder.toString())
                .redirectOutput(said.toFile()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
            if (!process.waitFor(30, TimeUnit.SECONDS) || process.exitValue() != 0) {
                throw new IllegalStateException("virtual sound server: " + what + " failed");
            }
            return Files.readAllLines(said, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() {
        started.forEach(Process::destroyForcibly);
        kill();
    }

    private static boolean pluginThere() {
        try (var found = Files.find(Path.of("/usr/lib"), 3, (path, attributes) -> path.endsWith("libasound_module_pcm_pulse.so"))) {
            return found.findAny().isPresent();
        } catch (IOException | UncheckedIOException e) {
            return false;
        }
    }
}
