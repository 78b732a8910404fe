package evenwood.ui.scale;

import java.util.List;

/** Where a level lies on a ladder. @param lowestDb at the bottom  @param highestDb at the top */
public record LevelScale(double lowestDb, double highestDb) {
    /** From under a quiet room's noise to a little over full scale. */
    public static final LevelScale FULL = new LevelScale(-72, 3);

    public LevelScale {
        if (!(lowestDb < highestDb)) {
            throw new IllegalArgumentException("level scale: lowestDb=" + lowestDb + ", highestDb=" + highestDb + ", but low < high is needed");
        }
    }

    /** 0 at the bottom, 1 at the top; what lies outside is put at the end. */
    public double part(double db) {
        return db > lowestDb ? Math.min(1, (db - lowestDb) / (highestDb - lowestDb)) : 0;
    }

    public boolean contains(double db) {
        return db >= lowestDb && db <= highestDb;
    }

    /** Round decibels for ticks, so many apart, lowest first. */
    public List<Integer> ticks(int apartDb) {
        int first = (int) Math.ceil(lowestDb / apartDb);
        int last = (int) Math.floor(highestDb / apartDb);
        return java.util.stream.IntStream.rangeClosed(first, last).map(step -> step * apartDb).boxed().toList();
    }
}
