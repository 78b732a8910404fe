package evenwood.ui.model;

import evenwood.sound.AudioBlock;
import evenwood.sound.Decibels;
import evenwood.sound.LiveInput;
import evenwood.sound.LiveInputs;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Listens at all inputs at once, only to show which of them carries sound. Asks again which there are, because they come and go.
 *
 * <p>Thread: one that asks, one for each input; {@link #inputs()} and {@link #peakDbfs} from any.
 */
public final class InputLevels implements AutoCloseable {
    private static final int MOST_AT_ONCE = 8;
    private static final int BLOCK_FRAMES = 1024;
    private static final long ASK_EVERY_NANOS = TimeUnit.SECONDS.toNanos(2);
    private static final float FALL_PER_BLOCK = 0.8f;

    private final Map<String, Float> peaks = new ConcurrentHashMap<>();
    private final Map<String, Boolean> heard = new ConcurrentHashMap<>();
    private volatile List<LiveInput> inputs = List.of();
    private volatile boolean asked;
    private volatile boolean closed;

    public void start() {
        begin("evenwood-inputs", this::ask);
    }

    /** In the system's order. */
    public List<LiveInput> inputs() {
        return inputs;
    }

    /** Whether the system was asked already. */
    public boolean isKnown() {
        return asked;
    }

    /** Highest sample lately; −Infinity when nothing came. */
    public double peakDbfs(String name) {
        return Decibels.ofAmplitude(peaks.getOrDefault(name, 0f));
    }

    @Override
    public void close() {
        closed = true;
    }

    private void ask() {
        while (!closed) {
            inputs = LiveInputs.list();
            asked = true;
            inputs.stream().limit(MOST_AT_ONCE).map(LiveInput::name).filter(name -> heard.putIfAbsent(name, true) == null)
                .forEach(name -> begin("evenwood-input-level", () -> hear(name)));
            LockSupport.parkNanos(ASK_EVERY_NANOS);
        }
    }

    private void hear(String name) {
        AudioBlock block = new AudioBlock(BLOCK_FRAMES);
        try (SoundSource source = LiveInputs.opener(LiveInputs.choose(name), 1).get()) {
            while (!closed && source.read(block) >= 0) {
                float peak = peaks.getOrDefault(name, 0f) * FALL_PER_BLOCK;
                for (int i = 0; i < block.frames(); i++) {
                    peak = Math.max(peak, Math.abs(block.sample(i)));
                }
                peaks.put(name, peak);
            }
        } catch (SoundProblem busyOrGone) {
            peaks.remove(name);
        } finally {
            heard.remove(name);
        }
    }

    private static void begin(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
    }
}
