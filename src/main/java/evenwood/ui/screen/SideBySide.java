package evenwood.ui.screen;

import java.util.Arrays;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/** Parts of a page beside each other where there is room, one under the other where there is not. */
final class SideBySide {
    private final GridPane grid = new GridPane();
    private final List<Region> parts;
    private final List<ColumnConstraints> columns;

    /** @param wideFromPx from which width they stand beside each other  @param shares of the width, in per cent, one for each part */
    SideBySide(double wideFromPx, List<Region> parts, double... shares) {
        this.parts = parts;
        columns = Arrays.stream(shares).mapToObj(SideBySide::column).toList();
        grid.getStyleClass().add("columns");
        parts.forEach(part -> {
            GridPane.setValignment(part, VPos.TOP);
            GridPane.setHgrow(part, Priority.ALWAYS);
            part.setMaxWidth(Double.MAX_VALUE);
        });
        grid.widthProperty().addListener((is, was, width) -> arrange(width.doubleValue() >= wideFromPx));
        arrange(true);
    }

    Region node() {
        return grid;
    }

    private static ColumnConstraints column(double share) {
        ColumnConstraints column = new ColumnConstraints();
        column.setPercentWidth(share);
        column.setHgrow(Priority.ALWAYS);
        return column;
    }

    private void arrange(boolean wide) {
        if (!grid.getChildren().isEmpty() && wide == (grid.getColumnConstraints().size() > 1)) {
            return;
        }
        grid.getChildren().clear();
        grid.getColumnConstraints().setAll(wide ? columns : List.of(column(100)));
        for (int i = 0; i < parts.size(); i++) {
            grid.add(parts.get(i), wide ? i : 0, wide ? 0 : i);
        }
    }
}
