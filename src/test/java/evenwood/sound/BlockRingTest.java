package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class BlockRingTest {
    private final AudioBlock out = new AudioBlock(4);

    @Test
    void blocksComeOutInTheOrderTheyWentIn() {
        BlockRing ring = new BlockRing(8, 4);
        ring.offer(AudioBlock.of(0, 0.1f, 0.2f));
        ring.offer(AudioBlock.of(2, 0.3f));
        assertThat(ring.poll(out)).isTrue();
        assertThat(out.startFrame()).isZero();
        assertThat(out.frames()).isEqualTo(2);
        assertThat(out.sample(1)).isEqualTo(0.2f);
        assertThat(ring.poll(out)).isTrue();
        assertThat(out.startFrame()).isEqualTo(2);
        assertThat(out.frames()).isEqualTo(1);
        assertThat(out.sample(0)).isEqualTo(0.3f);
    }

    @Test
    void anEmptyRingSaysSoAndLeavesTheBlockAlone() {
        out.set(77, 3);
        assertThat(new BlockRing(2, 4).poll(out)).isFalse();
        assertThat(out.startFrame()).isEqualTo(77);
    }

    @Test
    void aFullRingRefusesAndCountsWhatWasLost() {
        BlockRing ring = new BlockRing(5, 4);
        for (int i = 0; i < 5; i++) {
            assertThat(ring.offer(AudioBlock.of(i, i))).isTrue();
        }
        assertThat(ring.offer(AudioBlock.of(5, 0, 0, 0))).isFalse();
        assertThat(ring.offer(AudioBlock.of(8, 0, 0))).isFalse();
        assertThat(ring.lostFrames()).isEqualTo(5);
        ring.poll(out);
        assertThat(out.startFrame()).as("the oldest is kept, not the newest").isZero();
        assertThat(ring.offer(AudioBlock.of(10, 0))).as("there is room again").isTrue();
        assertThat(ring.lostFrames()).isEqualTo(5);
    }

    @Test
    void theProducerMayReuseItsBlockAtOnce() {
        BlockRing ring = new BlockRing(2, 4);
        AudioBlock mine = AudioBlock.of(0, 1f);
        ring.offer(mine);
        mine.samples()[0] = -1f;
        ring.poll(out);
        assertThat(out.sample(0)).isEqualTo(1f);
    }

    @Test
    void aRingForTwoSecondsHoldsTwoSeconds() {
        assertThat(BlockRing.holdingSeconds(2, 48_000, 512).capacityBlocks()).isEqualTo(188);
        assertThat(BlockRing.holdingSeconds(2, 192_000, 512).capacityBlocks()).isEqualTo(750);
    }

    @Test
    void aRingOfOneIsRefused() {
        assertThatThrownBy(() -> new BlockRing(1, 4)).hasMessage("block ring: capacityBlocks=1, but at least 2 are needed");
    }

    /** Every block carries its number in each sample: a torn, doubled or swapped block shows. */
    @Test
    @Timeout(60)
    void twoThreadsLoseNothingButWhatIsCounted() throws InterruptedException {
        int blocks = 200_000;
        BlockRing ring = new BlockRing(16, 8);
        long[] refused = new long[1];
        Thread producer = new Thread(() -> {
            AudioBlock block = new AudioBlock(8);
            for (int n = 0; n < blocks; n++) {
                java.util.Arrays.fill(block.samples(), n);
                block.set(n, 8);
                if (!ring.offer(block)) {
                    refused[0]++;
                    Thread.yield();
                }
            }
        });
        producer.start();
        long heard = 0;
        long lastNumber = -1;
        AudioBlock block = new AudioBlock(8);
        boolean last = false;
        while (!last) {
            last = !producer.isAlive();
            while (ring.poll(block)) {
                assertThat(block.startFrame()).isGreaterThan(lastNumber);
                lastNumber = block.startFrame();
                for (int i = 0; i < 8; i++) {
                    if (block.sample(i) != lastNumber) {
                        throw new AssertionError("torn block " + lastNumber + ": " + block.sample(i));
                    }
                }
                heard++;
            }
            Thread.yield();
        }
        producer.join();
        assertThat(ring.lostFrames()).isEqualTo(8 * refused[0]);
        assertThat(heard + refused[0]).isEqualTo(blocks);
        assertThat(heard).isGreaterThan(0);
    }

    @Test
    void passingABlockAllocatesNothing() {
        BlockRing ring = new BlockRing(4, 512);
        AudioBlock in = new AudioBlock(512);
        in.set(0, 512);
        AudioBlock heard = new AudioBlock(512);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        pass(ring, in, heard, 10_000);
        long before = threads.getCurrentThreadAllocatedBytes();
        pass(ring, in, heard, 10_000);
        assertThat(threads.getCurrentThreadAllocatedBytes() - before).isLessThan(1_000);
    }

    private static void pass(BlockRing ring, AudioBlock in, AudioBlock out, int times) {
        for (int i = 0; i < times; i++) {
            ring.offer(in);
            ring.poll(out);
        }
    }
}
