package evenwood.measure;

/**
 * The highest of a value's neighbours, for every value of a row.
 *
 * <p>How: a queue of falling values, each looked at twice at most, however wide the window. Source: Lemire 2006 (arXiv:cs/0610046).
 */
final class RunningMaximum {
    private RunningMaximum() { }

    /** @param before how many values before each count   @param after how many after it */
    static double[] of(double[] values, int before, int after) {
        double[] highest = new double[values.length];
        int[] queue = new int[values.length];
        int head = 0;
        int tail = 0;
        int next = 0;
        for (int i = 0; i < values.length; i++) {
            for (; next < values.length && next <= i + after; next++) {
                while (tail > head && values[queue[tail - 1]] <= values[next]) {
                    tail--;
                }
                queue[tail++] = next;
            }
            while (queue[head] < i - before) {
                head++;
            }
            highest[i] = values[queue[head]];
        }
        return highest;
    }
}
