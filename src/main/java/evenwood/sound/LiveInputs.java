package evenwood.sound;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.TargetDataLine;

/**
 * The inputs this machine has now: listed, and chosen by name.
 *
 * <p>Each call asks the system again, because devices come and go.
 */
public final class LiveInputs {
    private LiveInputs() { }

    /** What could be listened to, in the system's order (its default first); empty when there is nothing. */
    public static List<LiveInput> list() {
        return mixers().entrySet().stream().map(e -> describe(e.getKey(), e.getValue())).toList();
    }

    /**
     * The input with that name, or with that unambiguous part of a name; the first when {@code wanted} is null.
     *
     * @throws SoundProblem when there is none, or more than one; the message lists the near ones
     */
    public static LiveInput choose(String wanted) {
        return InputChoice.of(list(), wanted);
    }

    /** Opens the input, and opens it again in the same format whenever it is asked to. */
    public static LineOpener opener(LiveInput input, int channel) {
        return new LineOpener(input.name(), channel, LineOpener.DEFAULT_BUFFER_MS);
    }

    /** Everything that can deliver sound, by a name that is unique in the list. */
    static Map<String, Mixer> mixers() {
        Map<String, Mixer> named = new java.util.LinkedHashMap<>();
        Map<String, Integer> seen = new HashMap<>();
        for (Mixer.Info info : AudioSystem.getMixerInfo()) {
            Mixer mixer = AudioSystem.getMixer(info);
            if (!inputsOf(mixer).isEmpty()) {
                int count = seen.merge(info.getName(), 1, Integer::sum);
                named.put(count == 1 ? info.getName() : info.getName() + " #" + count, mixer);
            }
        }
        return named;
    }

    static List<AudioFormat> formatsOf(Mixer mixer) {
        List<AudioFormat> formats = new ArrayList<>();
        for (DataLine.Info line : inputsOf(mixer)) {
            formats.addAll(List.of(line.getFormats()));
        }
        return formats;
    }

    private static List<DataLine.Info> inputsOf(Mixer mixer) {
        List<DataLine.Info> inputs = new ArrayList<>();
        for (Line.Info line : mixer.getTargetLineInfo()) {
            if (line instanceof DataLine.Info data && TargetDataLine.class.isAssignableFrom(line.getLineClass())) {
                inputs.add(data);
            }
        }
        return inputs;
    }

    private static LiveInput describe(String name, Mixer mixer) {
        int channels = 0;
        TreeSet<Integer> rates = new TreeSet<>();
        for (AudioFormat format : formatsOf(mixer)) {
            channels = Math.max(channels, format.getChannels());
            if (format.getSampleRate() > 0) {
                rates.add(Math.round(format.getSampleRate()));
            }
        }
        return new LiveInput(name, mixer.getMixerInfo().getDescription(), channels, List.copyOf(rates));
    }
}
