package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class DistortionForestTest {
    private static final int EXAMPLES = 400;

    @Test
    void everyTreeIsFollowedToItsLeafAndTheMeanIsTold() {
        DistortionForest forest = new DistortionForest(List.of("0<1.5 =0.1 1<-2 =0.4 =0.9", "1<0 =0 =1"));
        assertThat(forest.share(new double[] {1, 5})).isCloseTo((0.1 + 1) / 2, within(1e-6));
        assertThat(forest.share(new double[] {1.5, -3})).isCloseTo((0.4 + 0) / 2, within(1e-6));
        assertThat(forest.share(new double[] {2, -2})).isCloseTo((0.9 + 0) / 2, within(1e-6));
    }

    @Test
    void aTreeWithWordsLeftOverIsRefused() {
        assertThatThrownBy(() -> new DistortionForest(List.of("0<1 =0 =1 =1"))).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("ends after 3");
    }

    /** Distorted where either feature is high, which the third, mere noise, has nothing to do with. */
    @Test
    void grownTreesTellTakesTheyHaveNotSeen() {
        SplittableRandom random = new SplittableRandom(5);
        double[][] x = new double[2 * EXAMPLES][];
        double[] y = new double[2 * EXAMPLES];
        for (int i = 0; i < x.length; i++) {
            x[i] = new double[] {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
            y[i] = x[i][0] > 1 || x[i][1] > 1 ? 1 : 0;
        }
        double[][] seen = java.util.Arrays.copyOf(x, EXAMPLES);
        double[] told = java.util.Arrays.copyOf(y, EXAMPLES);
        List<String> trees = java.util.stream.IntStream.range(0, 50).mapToObj(tree -> TreeGrowing.tree(seen, told, 2, random)).toList();
        DistortionForest forest = new DistortionForest(trees);
        int right = 0;
        for (int i = EXAMPLES; i < x.length; i++) {
            right += forest.share(x[i]) > 0.5 == (y[i] == 1) ? 1 : 0;
        }
        assertThat(right).isGreaterThan(EXAMPLES * 95 / 100);
    }

    @Test
    void theShippedTreesTellNothingUnusualFromClean() {
        assertThat(DistortionModel.shipped().join().probability(new double[DistortionFeatures.NAMES.length])).isBetween(0.0, 0.25);
    }

    @Test
    void numbersAreReadAsEverybodyReadsThem() {
        for (String word : new String[] {"0", "-5.16", "0.153", "-0.0341", "126", "1.0E-4", "-2.5E-5", "0.123456789", "1234567.5"}) {
            TreeWords words = new TreeWords(word + " =1");
            assertThat(words.number()).as(word).isEqualTo(Float.parseFloat(word));
            assertThat(words.takes(' ') && words.takes('=')).isTrue();
            assertThat(words.count()).isEqualTo(2);
        }
    }
}
