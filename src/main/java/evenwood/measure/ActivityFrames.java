package evenwood.measure;

import java.util.Arrays;

/**
 * The remembered band levels of an {@link ActivityMeter}, copied out for one reading.
 *
 * <p>Frame i is covered by hops i−1 and i, both counted from the first remembered hop.
 */
final class ActivityFrames {
    private final ActivityBands bands;
    private final int count;
    private final int row;
    private final float[] levels;
    private final float[] meanDb;

    ActivityFrames(ActivityBands bands, HopHistory history) {
        this.bands = bands;
        row = bands.count() + 1;
        count = (int) (history.endHop() - history.firstHop());
        levels = new float[count * row];
        meanDb = new float[count];
        for (int i = 0; i < count; i++) {
            history.copyRow(history.firstHop() + i, levels, i * row);
            double sum = 0;
            for (int b = 0; b < bands.count(); b++) {
                sum += levels[i * row + b];
            }
            meanDb[i] = (float) (sum / bands.count());
        }
    }

    ActivityBands bands() {
        return bands;
    }

    int count() {
        return count;
    }

    float bandDb(int frame, int band) {
        return levels[frame * row + band];
    }

    /** Level of everything above some 20 Hz. */
    float levelDbfs(int frame) {
        return levels[frame * row + row - 1];
    }

    /** Mean of the band levels: counts every band alike, however strong the hum in one of them. */
    float meanDb(int frame) {
        return meanDb[frame];
    }

    boolean isEmpty(int frame) {
        return levelDbfs(frame) <= ActivityBands.EMPTY_DB;
    }

    double meanBandDb(int band, int start, int frames) {
        double sum = 0;
        for (int i = start; i < start + frames; i++) {
            sum += levels[i * row + band];
        }
        return sum / frames;
    }

    /** The level a share of the non-empty frames stays under; −Infinity when there are none. */
    double percentileDbfs(double share) {
        double[] all = new double[count];
        int heard = 0;
        for (int i = 0; i < count; i++) {
            if (!isEmpty(i)) {
                all[heard++] = levelDbfs(i);
            }
        }
        Arrays.sort(all, 0, heard);
        return heard == 0 ? Double.NEGATIVE_INFINITY : all[Math.min(heard - 1, (int) (share * heard))];
    }
}
