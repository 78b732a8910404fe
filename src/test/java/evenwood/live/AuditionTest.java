package evenwood.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.eq.Rendering;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundFormat;
import evenwood.sound.SoundSource;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

class AuditionTest {
    private static final int RATE_HZ = 48_000;
    private static final EqChain HALF = EqChain.of(EqFilter.peak(1000, 1, -6.0206));

    private final List<Float> heard = new ArrayList<>();

    @Test
    void theSwitchIsHeardWithinTheFadeAndWithoutAStep() {
        Audition audition = new Audition(sine(), HALF, new Rendering(0, 0, 0), block -> {
            for (int i = 0; i < block.frames(); i++) {
                heard.add(block.sample(i));
            }
        });
        play(audition, 100);
        assertThat(audition.isMoved()).isTrue();
        assertThat(peakOfLast(1000)).isCloseTo(0.25f, within(0.002f));
        audition.toggle();
        play(audition, 100);
        assertThat(audition.isMoved()).isFalse();
        assertThat(peakOfLast(1000)).isCloseTo(0.5f, within(0.002f));
        float step = 0;
        for (int i = 2; i < heard.size(); i++) {
            // The second difference of a 1 kHz sine of 0.5 is at most 0.5·(2π·1000/48000)² = 0.0086.
            step = Math.max(step, Math.abs(heard.get(i) - 2 * heard.get(i - 1) + heard.get(i - 2)));
        }
        assertThat(step).isLessThan(0.010f);
    }

    @Test
    void itEndsWithTheTake() {
        Audition audition = new Audition(sine(), HALF, new Rendering(0, 0, 0), block -> { });
        int blocks = 0;
        while (audition.playNext()) {
            blocks++;
        }
        assertThat(blocks).isEqualTo(10 * RATE_HZ / 512 + 1);
    }

    private static void play(Audition audition, int blocks) {
        for (int i = 0; i < blocks; i++) {
            assertThat(audition.playNext()).isTrue();
        }
    }

    private float peakOfLast(int frames) {
        float peak = 0;
        for (float sample : heard.subList(heard.size() - frames, heard.size())) {
            peak = Math.max(peak, Math.abs(sample));
        }
        return peak;
    }

    /** Ten seconds of 1 kHz at half of full scale. */
    private static SoundSource sine() {
        return new SoundSource() {
            private long position;

            @Override
            public SoundFormat format() {
                return SoundFormat.mono(RATE_HZ);
            }

            @Override
            public OptionalLong lengthFrames() {
                return OptionalLong.of(10L * RATE_HZ);
            }

            @Override
            public String name() {
                return "sine";
            }

            @Override
            public int read(AudioBlock block) {
                int frames = (int) Math.min(block.capacityFrames(), 10L * RATE_HZ - position);
                if (frames <= 0) {
                    return -1;
                }
                for (int i = 0; i < frames; i++) {
                    block.samples()[i] = (float) (0.5 * Math.sin(2 * Math.PI * 1000 * (position + i) / RATE_HZ));
                }
                block.set(position, frames);
                position += frames;
                return frames;
            }

            @Override
            public void close() { }
        };
    }
}
