package evenwood.measure;

/**
 * The words of one tree of the {@link DistortionForest}, one after the other.
 *
 * <p>Our own reading of numbers, because splitting and parsing a hundred thousand words in the usual way takes a sixth of a second
 * of a check that lasts one.
 */
final class TreeWords {
    private static final double[] TENS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12};

    private final String line;
    private int at;

    TreeWords(String line) {
        this.line = line;
    }

    /** How many there are, from the beginning. */
    int count() {
        int words = 1;
        for (int i = line.indexOf(' '); i >= 0; i = line.indexOf(' ', i + 1)) {
            words++;
        }
        return words;
    }

    /** Steps over a letter if it stands here. */
    boolean takes(char letter) {
        boolean here = at < line.length() && line.charAt(at) == letter;
        at += here ? 1 : 0;
        return here;
    }

    /** The number that stands here: a decimal fraction, with a power of ten or without. */
    float number() {
        int start = at;
        boolean negative = takes('-');
        long digits = 0;
        int decimals = 0;
        boolean fraction = false;
        for (char letter = here(); letter >= '0' && letter <= '9' || letter == '.'; letter = here()) {
            if (letter == '.') {
                fraction = true;
            } else {
                digits = 10 * digits + letter - '0';
                decimals += fraction ? 1 : 0;
            }
            at++;
        }
        if (here() == 'E' || decimals >= TENS.length) {
            return Float.parseFloat(line.substring(start, at = endOfWord()));
        }
        if (at == start) {
            throw new IllegalArgumentException("distortion forest: no number at letter " + at + " of a tree");
        }
        double size = digits / TENS[decimals];
        return (float) (negative ? -size : size);
    }

    private char here() {
        return at < line.length() ? line.charAt(at) : ' ';
    }

    private int endOfWord() {
        int end = line.indexOf(' ', at);
        return end < 0 ? line.length() : end;
    }
}
