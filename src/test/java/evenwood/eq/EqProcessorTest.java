package evenwood.eq;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.sound.AudioBlock;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EqProcessorTest {
    private static final EqChain CHAIN = new EqChain(-2, java.util.List.of(EqFilter.highPass(90, 3), EqFilter.lowShelf(150, 0.7, -6),
        EqFilter.peak(420, 2, -4), EqFilter.highShelf(4000, 0.7, 3), EqFilter.notch(180, 14)));

    @ParameterizedTest
    @ValueSource(doubles = {60, 180.5, 420, 1000, 6000, 15000})
    void aSineLeavesAsLoudAsPredicted(double hz) {
        float[] sine = new float[96_000];
        for (int i = 0; i < sine.length; i++) {
            sine[i] = (float) (0.1 * Math.sin(2 * Math.PI * hz * i / 48_000));
        }
        new EqProcessor(CHAIN, 48_000).process(sine, sine.length);
        double sum = 0;
        for (int i = 48_000; i < 96_000; i++) {
            sum += (double) sine[i] * sine[i];
        }
        double heardDb = 10 * Math.log10(sum / 48_000 / (0.1 * 0.1 / 2));
        assertThat(heardDb).isCloseTo(CHAIN.responseDb(hz, 48_000), within(0.02));
    }

    @Test
    void theBlockSizeChangesNothing() {
        float[] whole = noise();
        float[] pieces = noise();
        new EqProcessor(CHAIN, 44_100).process(whole, whole.length);
        EqProcessor processor = new EqProcessor(CHAIN, 44_100);
        for (int start = 0, size = 1; start < pieces.length; start += size, size = size % 97 + 1) {
            float[] piece = java.util.Arrays.copyOfRange(pieces, start, Math.min(pieces.length, start + size));
            AudioBlock block = AudioBlock.of(start, piece);
            processor.process(block);
            System.arraycopy(block.samples(), 0, pieces, start, piece.length);
        }
        assertThat(pieces).isEqualTo(whole);
    }

    @Test
    void aFlatChainIsNoChange() {
        float[] in = noise();
        new EqProcessor(EqChain.FLAT, 48_000).process(in, in.length);
        assertThat(in).isEqualTo(noise());
    }

    @Test
    void aStageAboveHalfTheRateIsLeftOut() {
        assertThat(EqFilter.highShelf(6000, 0.7, 6).responseDb(3000, 8000)).isZero();
    }

    private static float[] noise() {
        SplittableRandom random = new SplittableRandom(3);
        float[] noise = new float[20_000];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (float) (random.nextDouble() - 0.5);
        }
        return noise;
    }
}
