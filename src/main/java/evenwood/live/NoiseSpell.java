package evenwood.live;

import evenwood.coach.hunt.NoiseParts;
import evenwood.measure.ActivityReading;
import evenwood.measure.HopGrid;
import evenwood.measure.NoiseMeter;
import evenwood.measure.NoiseReading;
import evenwood.measure.ShortTimeSpectrum;
import evenwood.sound.AudioBlock;
import evenwood.sound.LineOpener;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;
import evenwood.sound.SoundTrouble;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * A few seconds of nothing but noise, measured in short stretches so that the spread between them tells how sure the levels are.
 *
 * <p>In: blocks while nobody plays; all of it counts as quiet. Out: {@link NoiseParts}.
 * <p>How: a fresh {@link NoiseMeter} for each stretch of about a second, long enough for the mains harmonics.
 * <p>Thread: blocks on one thread; {@link #parts} once it is complete or that thread has ended.
 */
public final class NoiseSpell implements BlockListener {
    private static final double STRETCH_SECONDS = 1;
    private static final double SHORTEST_SECONDS = 2;
    private static final int BLOCK_FRAMES = 4096;
    /** Devices click or swell when they are opened. */
    private static final double SETTLING_SECONDS = 0.4;
    /** Sound servers deliver their first block up to 1.7 s after opening; a slow machine takes longer. */
    private static final double PATIENCE_SECONDS = 20;
    private static final long LOOK_MILLIS = 50;

    private final HopGrid grid;
    private final int stretches;
    private final Consumer<NoiseSoFar> told;
    private final CountDownLatch complete = new CountDownLatch(1);
    private final List<NoiseReading> readings = new ArrayList<>();
    private ShortTimeSpectrum spectrum;
    private NoiseMeter meter;
    private long unsettledFrames;
    private long frames;

    /** @param stretches after so many it is complete */
    NoiseSpell(int sampleRateHz, int stretches, double settlingSeconds) {
        this(sampleRateHz, stretches, settlingSeconds, soFar -> { });
    }

    /** @param told after every stretch, on the thread of the blocks */
    NoiseSpell(int sampleRateHz, int stretches, double settlingSeconds, Consumer<NoiseSoFar> told) {
        grid = new HopGrid(sampleRateHz);
        this.stretches = stretches;
        this.told = told;
        unsettledFrames = Math.round(settlingSeconds * sampleRateHz);
        begin();
    }

    /**
     * Listens to an input for so long, on threads of its own, and waits.
     *
     * @throws SoundProblem if it cannot be opened or delivers nothing
     */
    public static NoiseParts listen(LineOpener opener, double seconds) {
        return listen(opener, seconds, soFar -> { });
    }

    /** The same, telling after every second what is heard so far; must not wait. */
    public static NoiseParts listen(LineOpener opener, double seconds, Consumer<NoiseSoFar> told) {
        return listen(opener, seconds, told, () -> false).orElseThrow();
    }

    /** The same. @param over asked many times a second on the waiting thread: whether to end without a result, which is then empty */
    public static Optional<NoiseParts> listen(LineOpener opener, double seconds, Consumer<NoiseSoFar> told, BooleanSupplier over) {
        SoundSource source = opener.get();
        int stretches = (int) Math.max(SHORTEST_SECONDS, Math.ceil(seconds / STRETCH_SECONDS));
        NoiseSpell spell = new NoiseSpell(source.format().sampleRateHz(), stretches, SETTLING_SECONDS, told);
        try (LiveTake take = LiveTake.start(source, opener, spell)) {
            long patience = System.nanoTime() + Math.round(1e9 * (seconds + PATIENCE_SECONDS));
            while (!spell.complete.await(LOOK_MILLIS, TimeUnit.MILLISECONDS)) {
                if (System.nanoTime() > patience) {
                    throw SoundProblem.midway(source.name() + ": no sound comes from this input; check its plug and whether another program holds it", null)
                        .of(SoundTrouble.INPUT_SILENT, source.name());
                }
                if (over.getAsBoolean()) {
                    return Optional.empty();
                }
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw SoundProblem.midway(source.name() + ": listening was broken off; begin again", interrupted).of(SoundTrouble.BROKEN_OFF, source.name());
        }
        return Optional.of(spell.parts());
    }

    /** Hears a recording to its end, on the caller's thread. @throws SoundProblem if it cannot be read or is shorter than two seconds */
    public static NoiseParts measure(SoundSource source) {
        NoiseSpell spell = new NoiseSpell(source.format().sampleRateHz(), Integer.MAX_VALUE, 0);
        AudioBlock block = new AudioBlock(BLOCK_FRAMES);
        while (source.read(block) >= 0) {
            spell.accept(block);
        }
        if (spell.readings.size() < SHORTEST_SECONDS / STRETCH_SECONDS) {
            throw SoundProblem.atStart(String.format(Locale.ROOT, "%s: %.1f s of noise, but at least %.0f s are needed; record longer, with nobody playing",
                source.name(), (double) spell.frames / source.format().sampleRateHz(), SHORTEST_SECONDS))
                .of(SoundTrouble.NOISE_SHORT, source.name(), (double) spell.frames / source.format().sampleRateHz(), SHORTEST_SECONDS);
        }
        return spell.parts();
    }

    private void begin() {
        meter = new NoiseMeter(grid, 2 * STRETCH_SECONDS);
        spectrum = new ShortTimeSpectrum(grid, meter);
    }

    /** Hears one block. [analysis thread] */
    @Override
    public void accept(AudioBlock block) {
        if (unsettledFrames > 0) {
            unsettledFrames -= block.frames();
            return;
        }
        if (readings.size() >= stretches) {
            return;
        }
        spectrum.accept(block);
        frames += block.frames();
        if (frames / (STRETCH_SECONDS * grid.sampleRateHz()) >= readings.size() + 1) {
            byte[] quiet = new byte[grid.hopsIn(2 * STRETCH_SECONDS)];
            Arrays.fill(quiet, ActivityReading.QUIET);
            readings.add(meter.reading(new ActivityReading(grid, 0, quiet, Double.NEGATIVE_INFINITY)));
            begin();
            told.accept(new NoiseSoFar((double) readings.size() / stretches, parts()));
        }
        if (readings.size() >= stretches) {
            complete.countDown();
        }
    }

    /** What is missing would look like a click; the stretch begins again. [analysis thread] */
    @Override
    public void gap(long lostFrames) {
        begin();
        frames = Math.round(readings.size() * STRETCH_SECONDS * grid.sampleRateHz());
    }

    NoiseParts parts() {
        return NoiseParts.of(readings);
    }
}
