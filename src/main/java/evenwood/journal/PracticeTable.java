package evenwood.journal;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;

/** Sittings in the store's table. */
final class PracticeTable {
    private final Connection connection;

    PracticeTable(Connection connection) {
        this.connection = connection;
    }

    /** A sitting that goes on is written again under its uid. */
    void insert(Practice practice) throws SQLException {
        TakeTable.update(connection, "INSERT INTO practice (uid, at_millis, offset_seconds, instrument, form) VALUES (?, ?, ?, ?, ?)"
            + " ON CONFLICT (uid) DO UPDATE SET form = excluded.form", practice.uid(), practice.at().toInstant().toEpochMilli(),
            practice.at().getOffset().getTotalSeconds(), practice.instrument(), StoredForm.packed(practice.figures()));
    }

    List<Practice> all() throws SQLException {
        return TakeTable.rows(connection, "SELECT uid, at_millis, offset_seconds, instrument, form FROM practice ORDER BY at_millis, id",
            row -> new Practice(row.getString(1), TakeTable.time(row.getLong(2), row.getInt(3)), row.getString(4),
                StoredForm.unpacked(row.getBytes(5), Practice.Figures.class)));
    }
}
