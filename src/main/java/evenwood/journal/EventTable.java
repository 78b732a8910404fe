package evenwood.journal;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;

/** Events in the store's table. */
final class EventTable {
    private final Connection connection;

    EventTable(Connection connection) {
        this.connection = connection;
    }

    void insert(Event event) throws SQLException {
        TakeTable.update(connection, "INSERT OR IGNORE INTO event (uid, at_millis, offset_seconds, kind, instrument, note) VALUES (?, ?, ?, ?, ?, ?)",
            event.uid(), event.at().toInstant().toEpochMilli(), event.at().getOffset().getTotalSeconds(), event.kind().id(), event.instrument(), event.note());
    }

    List<Event> all() throws SQLException {
        return TakeTable.rows(connection, "SELECT uid, at_millis, offset_seconds, kind, instrument, note FROM event ORDER BY at_millis, id",
            row -> new Event(row.getString(1), TakeTable.time(row.getLong(2), row.getInt(3)),
                EventKind.ofId(row.getString(4)).orElse(EventKind.OTHER), row.getString(5), row.getString(6)));
    }
}
