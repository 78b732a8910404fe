package evenwood.sound;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;

/**
 * An output of this machine: plays mono sound, the same on both channels.
 *
 * <p>In: blocks, full scale ±1.0; what is beyond is held at full scale. Rate: the take's own, because nothing here resamples.
 * <p>Thread: one writer, which waits while the device has enough; {@link #close} from any thread releases it.
 */
public final class Speaker implements SoundSink, AutoCloseable {
    /** Short enough that a switch is heard as it is pressed. */
    private static final int BUFFER_MS = 80;

    private final SourceDataLine line;
    private final int bytesPerSample;
    private final int channels;
    private byte[] bytes = new byte[0];
    private volatile boolean closed;

    private Speaker(SourceDataLine line) {
        this.line = line;
        bytesPerSample = line.getFormat().getSampleSizeInBits() / 8;
        channels = line.getFormat().getChannels();
    }

    /** The outputs there are, in the system's order. */
    public static List<String> names() {
        return List.copyOf(mixers().keySet());
    }

    /**
     * Opens an output by its name or a part of it; the system's first when none is named.
     *
     * @throws SoundProblem when there is none of that name, or it cannot play at this rate
     */
    public static Speaker open(String wanted, int sampleRateHz) {
        Map<String, Mixer> mixers = mixers();
        if (mixers.isEmpty()) {
            throw SoundProblem.atStart("play: no output was found on this machine; plug in headphones or an interface").of(SoundTrouble.OUTPUT_NONE);
        }
        String name = wanted == null ? mixers.keySet().iterator().next() : mixers.keySet().stream()
            .filter(each -> each.toLowerCase(Locale.ROOT).contains(wanted.strip().toLowerCase(Locale.ROOT))).findFirst()
            .orElseThrow(() -> SoundProblem.atStart("play: there is no output \"" + wanted + "\"; choose one of: "
                + mixers.keySet().stream().map(each -> "\"" + each + "\"").collect(Collectors.joining(", "))).of(SoundTrouble.OUTPUT_AWAY, wanted));
        Exception last = null;
        for (AudioFormat format : formats(sampleRateHz)) {
            try {
                SourceDataLine line = (SourceDataLine) mixers.get(name).getLine(new DataLine.Info(SourceDataLine.class, format));
                line.open(format, Math.round(sampleRateHz * BUFFER_MS / 1000f) * format.getFrameSize());
                line.start();
                return new Speaker(line);
            } catch (LineUnavailableException | IllegalArgumentException | SecurityException refused) {
                last = refused;
            }
        }
        throw SoundProblem.atStart("play: the output \"" + name + "\" cannot play " + sampleRateHz + " Hz ("
            + (last == null || last.getMessage() == null ? "refused" : last.getMessage()) + "); choose another output, or close other programs that use it", last).of(SoundTrouble.OUTPUT_REFUSED, name);
    }

    @Override
    public void write(AudioBlock block) {
        int frameBytes = bytesPerSample * channels;
        if (bytes.length < block.capacityFrames() * frameBytes) {
            bytes = new byte[block.capacityFrames() * frameBytes];
        }
        int at = 0;
        double steps = Math.pow(2, 8 * bytesPerSample - 1);
        for (int i = 0; i < block.frames(); i++) {
            int code = (int) Math.max(-steps, Math.min(steps - 1, Math.rint(block.sample(i) * steps)));
            for (int channel = 0; channel < channels; channel++) {
                for (int b = 0; b < bytesPerSample; b++) {
                    bytes[at++] = (byte) (code >> 8 * b);
                }
            }
        }
        int written = 0;
        while (written < at && !closed) {
            int now = line.write(bytes, written, at - written);
            if (now <= 0) {
                throw SoundProblem.midway("play: the output takes nothing any more; check that it is plugged in and switched on", null).of(SoundTrouble.OUTPUT_STUCK);
            }
            written += now;
        }
    }

    /** Waits until everything written was heard. */
    public void drain() {
        line.drain();
    }

    @Override
    public void close() {
        closed = true;
        line.close();
    }

    private static List<AudioFormat> formats(int sampleRateHz) {
        List<AudioFormat> formats = new ArrayList<>();
        for (int bits : new int[] {24, 16}) {
            for (int channels : new int[] {2, 1}) {
                formats.add(new AudioFormat(sampleRateHz, bits, channels, true, false));
            }
        }
        return formats;
    }

    private static Map<String, Mixer> mixers() {
        Map<String, Mixer> named = new LinkedHashMap<>();
        for (Mixer.Info info : AudioSystem.getMixerInfo()) {
            Mixer mixer = AudioSystem.getMixer(info);
            for (Line.Info line : mixer.getSourceLineInfo()) {
                if (SourceDataLine.class.isAssignableFrom(line.getLineClass())) {
                    named.putIfAbsent(info.getName(), mixer);
                }
            }
        }
        return named;
    }
}
