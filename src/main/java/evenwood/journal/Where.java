package evenwood.journal;

import java.util.ArrayList;
import java.util.List;

/** A {@link TakeFilter} as the condition of a query over {@code take t}. */
final class Where {
    private static final List<String> SEARCHED = List.of("t.name", "t.instrument", "t.rig_name", "t.venue", "t.note", "t.tags", "t.faults");

    private final List<String> conditions = new ArrayList<>();
    private final List<Object> values = new ArrayList<>();

    Where(TakeFilter filter) {
        for (String word : filter.words()) {
            conditions.add("(" + String.join(" || ' ' || ", SEARCHED) + ") LIKE ? ESCAPE '\\'");
            values.add("%" + escaped(word) + "%");
        }
        filter.instrument().ifPresent(name -> {
            conditions.add("(t.instrument = ? COLLATE NOCASE OR t.rig_name = ? COLLATE NOCASE)");
            values.add(name);
            values.add(name);
        });
        filter.tag().ifPresent(tag -> {
            conditions.add("' ' || t.tags || ' ' LIKE ? ESCAPE '\\'");
            values.add("% " + escaped(tag) + " %");
        });
        filter.from().ifPresent(time -> {
            conditions.add("t.kept_millis >= ?");
            values.add(time.toEpochMilli());
        });
        filter.to().ifPresent(time -> {
            conditions.add("t.kept_millis < ?");
            values.add(time.toEpochMilli());
        });
    }

    /** Empty, or beginning with WHERE. */
    String sql() {
        return conditions.isEmpty() ? "" : " WHERE " + String.join(" AND ", conditions);
    }

    /** The same after another condition. */
    String sqlAfter(String first) {
        return " WHERE " + first + (conditions.isEmpty() ? "" : " AND " + String.join(" AND ", conditions));
    }

    List<Object> values() {
        return values;
    }

    private static String escaped(String text) {
        return text.replace("\\", "\\\\").replace("%", "\\%").replace("_", "\\_");
    }
}
