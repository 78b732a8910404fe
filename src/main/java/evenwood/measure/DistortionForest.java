package evenwood.measure;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Decision trees over the {@link DistortionFeatures}: the mean over the trees of the share of distorted takes in the leaf
 * that a take falls into. Trees, for evidence of one kind counts more beside evidence of another, and because far away
 * from everything known they say what they said at its edge, where a weighted sum would go on growing.
 *
 * <p>In the file one tree a line, from the root: {@code 12<0.153} asks whether feature 12 is less, then come what is asked
 * if so and what is asked if not; {@code =0.87} is a leaf. Source: extremely randomised trees (Geurts, Ernst and
 * Wehenkel, Machine Learning 63, 2006), grown by DistortionFitting (test scope).
 */
final class DistortionForest {
    private static final String FILE = "distortion-forest.txt";

    private final List<Tree> trees = new ArrayList<>();

    /** @param lines one tree each */
    DistortionForest(List<String> lines) {
        lines.forEach(line -> trees.add(new Tree(line)));
    }

    /** The one that is shipped. */
    static DistortionForest shipped() {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(DistortionForest.class.getResourceAsStream(FILE), StandardCharsets.US_ASCII))) {
            return new DistortionForest(in.lines().toList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** 0 to 1. */
    double share(double[] values) {
        double sum = 0;
        for (Tree tree : trees) {
            sum += tree.share(values);
        }
        return sum / trees.size();
    }

    /** Nodes in the order of the file. */
    private static final class Tree {
        /** −1 in a leaf. */
        private final int[] feature;
        /** What to compare with, or a leaf's share. */
        private final float[] number;
        /** Where to go on when it is not less. */
        private final int[] otherwise;

        private Tree(String line) {
            TreeWords words = new TreeWords(line);
            int count = words.count();
            feature = new int[count];
            number = new float[count];
            otherwise = new int[count];
            int end = read(words, 0);
            if (end != count) {
                throw new IllegalArgumentException("distortion forest: a tree of " + count + " words ends after " + end);
            }
        }

        private double share(double[] values) {
            int at = 0;
            while (feature[at] >= 0) {
                at = values[feature[at]] < number[at] ? at + 1 : otherwise[at];
            }
            return number[at];
        }

        /** What begins at a word; tells where it ends. */
        private int read(TreeWords words, int at) {
            boolean leaf = words.takes('=');
            feature[at] = leaf ? -1 : (int) words.number();
            words.takes('<');
            number[at] = words.number();
            words.takes(' ');
            if (leaf) {
                return at + 1;
            }
            otherwise[at] = read(words, at + 1);
            return read(words, otherwise[at]);
        }
    }
}
