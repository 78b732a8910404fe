package evenwood.measure;

import java.util.Arrays;

/**
 * What is always in a spectrum: hum and the lowest of the hiss, so that the pitch of soft playing can be heard over it.
 *
 * <p>In: one power spectrum a hop. Out: {@link #floor()}, for each bin its minimum over the last 24 to 30 seconds; zeros
 * during the first 3 seconds, when a first note could still be mistaken for hum.
 * <p>How: minimum statistics in five parts of six seconds each. Source: Martin 2001.
 * <p>Limits: a tone held for half a minute without a change becomes floor.
 * <p>Thread: one owner; only the constructor allocates.
 */
final class BinFloor {
    private static final int PARTS = 5;
    private static final double PART_SECONDS = 6;
    private static final double FIRST_SECONDS = 3;

    private final int partHops;
    private final int firstHops;
    private final float[][] minima;
    private final float[] floor;
    private int heardHops;
    private int part;
    private int hopsOfPart;

    BinFloor(HopGrid grid, int bins) {
        partHops = grid.hopsIn(PART_SECONDS);
        firstHops = grid.hopsIn(FIRST_SECONDS);
        minima = new float[PARTS][bins];
        floor = new float[bins];
        reset();
    }

    /** Hears the first bins of a spectrum. [audio thread] */
    void accept(float[] power) {
        float[] now = minima[part];
        for (int k = 0; k < now.length; k++) {
            now[k] = Math.min(now[k], power[k]);
        }
        heardHops = Math.min(heardHops + 1, firstHops);
        if (heardHops == firstHops) {
            renew();
        }
        if (++hopsOfPart == partHops) {
            hopsOfPart = 0;
            part = (part + 1) % PARTS;
            Arrays.fill(minima[part], Float.MAX_VALUE);
        }
    }

    float[] floor() {
        return floor;
    }

    void reset() {
        heardHops = 0;
        hopsOfPart = 0;
        part = 0;
        Arrays.fill(floor, 0);
        for (float[] minimum : minima) {
            Arrays.fill(minimum, Float.MAX_VALUE);
        }
    }

    private void renew() {
        System.arraycopy(minima[0], 0, floor, 0, floor.length);
        for (int p = 1; p < PARTS; p++) {
            float[] minimum = minima[p];
            for (int k = 0; k < floor.length; k++) {
                floor[k] = Math.min(floor[k], minimum[k]);
            }
        }
    }
}
