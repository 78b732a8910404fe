package evenwood.sound;

import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.TargetDataLine;

/**
 * Opens one input by name, as often as it takes.
 *
 * <p>In: the input's name, the channel to hear, how much the system may hold back. Out: {@link #get}, a source that has
 * been started. The first success fixes rate and bit depth; later ones bring the same or fail, because what listens
 * was built for it.
 * <p>How: asks the system for its devices anew each time, tries the formats of {@link LineFormats} in order, and names
 * what every device can fail with (no line, no permission, busy) in one sentence.
 * <p>Thread: one at a time.
 */
public final class LineOpener implements Supplier<LiveSource> {
    /**
     * How much sound the system may hold back. Our choice: long enough for a garbage collector's pause, short enough
     * that a meter follows the hand (capture to meter under 60 ms with a block of 10.7 ms).
     */
    public static final int DEFAULT_BUFFER_MS = 40;

    private static final int FORMATS_TRIED = 12;

    private final String name;
    private final int channel;
    private final int bufferMs;
    private final Supplier<Map<String, Mixer>> mixers;
    private SoundFormat settled;

    public LineOpener(String name, int channel, int bufferMs) {
        this(name, channel, bufferMs, LiveInputs::mixers);
    }

    LineOpener(String name, int channel, int bufferMs, Supplier<Map<String, Mixer>> mixers) {
        if (channel < 1) {
            throw SoundProblem.atStart("listen: channel " + channel + " cannot be; channels count from 1").of(SoundTrouble.INPUT_CHANNEL, name, channel);
        }
        this.name = name;
        this.channel = channel;
        this.bufferMs = bufferMs;
        this.mixers = mixers;
    }

    public String name() {
        return name;
    }

    /** @throws SoundProblem when the input is not there, is busy, or offers no format that fits */
    @Override
    public LiveSource get() {
        Mixer mixer = mixers.get().get(name);
        if (mixer == null) {
            throw SoundProblem.atStart("listen: the input \"" + name + "\" is not there; plug it in and switch it on").of(SoundTrouble.INPUT_AWAY, name);
        }
        List<AudioFormat> offered = LiveInputs.formatsOf(mixer);
        List<AudioFormat> wanted = LineFormats.toTry(offered, channel).stream().filter(this::suits).limit(FORMATS_TRIED).toList();
        if (wanted.isEmpty()) {
            throw nothingFits(offered);
        }
        return openFirst(mixer, wanted);
    }

    private LiveSource openFirst(Mixer mixer, List<AudioFormat> wanted) {
        Exception last = null;
        for (AudioFormat format : wanted) {
            try {
                LineSource source = open(mixer, format);
                settled = source.format();
                return source;
            } catch (LineUnavailableException | IllegalArgumentException | SecurityException refused) {
                last = refused;
            }
        }
        throw SoundProblem.atStart("listen: the input \"" + name + "\" could not be opened (" + reason(last)
            + "); close other programs that use it, and check that this one may", last).of(SoundTrouble.INPUT_REFUSED, name);
    }

    private LineSource open(Mixer mixer, AudioFormat format) throws LineUnavailableException {
        TargetDataLine line = (TargetDataLine) mixer.getLine(new DataLine.Info(TargetDataLine.class, format));
        try {
            line.open(format, bufferMs * Math.round(format.getFrameRate()) / 1000 * format.getFrameSize());
            line.start();
            return new LineSource(line, format, channel, name);
        } catch (LineUnavailableException | RuntimeException refused) {
            line.close();
            throw refused;
        }
    }

    private boolean suits(AudioFormat format) {
        return settled == null
            || settled.sampleRateHz() == Math.round(format.getSampleRate()) && settled.bitDepth() == format.getSampleSizeInBits();
    }

    private SoundProblem nothingFits(List<AudioFormat> offered) {
        int most = offered.stream().mapToInt(AudioFormat::getChannels).max().orElse(0);
        if (most > 0 && channel > most) {
            return SoundProblem.atStart("listen: channel " + channel + " of the input \"" + name + "\" cannot be heard, it has " + most
                + "; choose channel 1 to " + most).of(SoundTrouble.INPUT_CHANNEL, name, channel);
        }
        if (settled != null) {
            return SoundProblem.atStart("listen: the input \"" + name + "\" is back, but without " + settled.sampleRateHz() + " Hz, "
                + settled.bitDepth() + " bit; set it to that again, or start anew").of(SoundTrouble.INPUT_CHANGED, name, settled.sampleRateHz(), settled.bitDepth());
        }
        return SoundProblem.atStart("listen: the input \"" + name + "\" offers no format that can be measured (" + offered.stream()
            .map(AudioFormat::toString).distinct().limit(3).collect(Collectors.joining("; ")) + "); choose another input").of(SoundTrouble.INPUT_FORMAT, name);
    }

    private static String reason(Exception refused) {
        return refused.getMessage() == null ? refused.getClass().getSimpleName() : refused.getMessage();
    }
}
