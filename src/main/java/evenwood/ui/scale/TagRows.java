package evenwood.ui.scale;

import java.util.ArrayList;
import java.util.List;

/** Puts words beside each other on an axis so that none covers another: as near to where they belong as their row allows. */
public final class TagRows {
    private final List<Double> ends = new ArrayList<>();
    private final double gapPx;
    private final double fromPx;
    private final double toPx;

    public TagRows(double fromPx, double toPx, double gapPx) {
        this.fromPx = fromPx;
        this.toPx = toPx;
        this.gapPx = gapPx;
    }

    /** @param row 0 is the first  @param leftPx where the word begins */
    public record Place(int row, double leftPx) { }

    /** Tags must come with rising middles. */
    public Place place(double middlePx, double widthPx) {
        double left = Math.max(fromPx, Math.min(toPx - widthPx, middlePx - widthPx / 2));
        int row = 0;
        while (row < ends.size() && ends.get(row) + gapPx > left) {
            row++;
        }
        if (row == ends.size()) {
            ends.add(left + widthPx);
        } else {
            ends.set(row, left + widthPx);
        }
        return new Place(row, left);
    }

    public int rows() {
        return ends.size();
    }
}
