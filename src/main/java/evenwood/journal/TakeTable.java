package evenwood.journal;

import evenwood.coach.Assessment;
import evenwood.rig.Rig;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Takes in the store's tables. */
final class TakeTable {
    private static final String LINE = "SELECT t.id, t.uid, t.kept_millis, t.offset_seconds, t.name, t.duration_seconds, t.instrument, t.rig_name,"
        + " t.venue, t.note, t.tags, t.faults, EXISTS (SELECT 1 FROM audio a WHERE a.take = t.id) FROM take t";

    private final Connection connection;

    TakeTable(Connection connection) {
        this.connection = connection;
    }

    long insert(TakeToKeep take) throws SQLException {
        Optional<Long> there = idOf(take.uid());
        if (there.isPresent()) {
            return there.get();
        }
        long id = insertLine(take);
        update("INSERT INTO assessment (take, form) VALUES (?, ?)", id, StoredForm.packed(take.assessment()));
        if (take.flac().isPresent()) {
            update("INSERT INTO audio (take, flac) VALUES (?, ?)", id, take.flac().get());
        }
        insertReadings(id, take);
        return id;
    }

    private long insertLine(TakeToKeep take) throws SQLException {
        TakeWords words = take.words();
        String instrument = words.instrument().isEmpty() ? take.rig().map(rig -> rig.instrument().id()).orElse("") : words.instrument();
        String faults = String.join(" ", take.assessment().verdict().findings().stream()
            .map(finding -> finding.fault().id() + ":" + finding.severity().id()).toList());
        update("INSERT INTO take (uid, kept_millis, offset_seconds, name, duration_seconds, instrument, rig_name, venue, note, tags, faults, rig)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", take.uid(), take.keptAt().toInstant().toEpochMilli(),
            take.keptAt().getOffset().getTotalSeconds(), take.assessment().readings().take().name(), take.assessment().readings().take().durationSeconds(),
            instrument, take.rig().map(Rig::name).orElse(""), words.venue(), words.note(), String.join(" ", words.tags()), faults,
            take.rig().isPresent() ? rigId(take.rig().get()) : null);
        return idOf(take.uid()).orElseThrow();
    }

    private long rigId(Rig rig) throws SQLException {
        String fingerprint = StoredForm.fingerprint(rig);
        update("INSERT OR IGNORE INTO rig (fingerprint, form) VALUES (?, ?)", fingerprint, StoredForm.packed(rig));
        return one("SELECT id FROM rig WHERE fingerprint = ?", row -> row.getLong(1), fingerprint).orElseThrow();
    }

    private void insertReadings(long id, TakeToKeep take) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("INSERT INTO reading (name, take, value) VALUES (?, ?, ?)")) {
            for (Reading reading : Reading.ALL) {
                double value = reading.in(take.assessment().readings(), take.rig());
                if (Double.isFinite(value)) {
                    set(insert, reading.name(), id, value);
                    insert.addBatch();
                }
            }
            insert.executeBatch();
        }
    }

    Optional<Long> idOf(String uid) throws SQLException {
        return one("SELECT id FROM take WHERE uid = ?", row -> row.getLong(1), uid);
    }

    List<TakeLine> list(TakeFilter filter) throws SQLException {
        Where where = new Where(filter);
        String query = LINE + where.sql() + " ORDER BY t.kept_millis DESC, t.id DESC LIMIT ?";
        where.values().add(filter.most());
        return many(query, TakeTable::line, where.values().toArray());
    }

    int count() throws SQLException {
        return one("SELECT COUNT(*) FROM take", row -> row.getInt(1)).orElseThrow();
    }

    Optional<KeptTake> take(long id) throws SQLException {
        Optional<TakeLine> line = one(LINE + " WHERE t.id = ?", TakeTable::line, id);
        if (line.isEmpty()) {
            return Optional.empty();
        }
        byte[] form = one("SELECT form FROM assessment WHERE take = ?", row -> row.getBytes(1), id)
            .orElseThrow(() -> new JournalProblem("journal: the readings of take " + id + " are missing; a backup may still have them")
                .of(JournalTrouble.ENTRY_DAMAGED, id));
        Optional<Rig> rig = one("SELECT r.form FROM take t JOIN rig r ON r.id = t.rig WHERE t.id = ?", row -> row.getBytes(1), id)
            .map(bytes -> StoredForm.unpacked(bytes, Rig.class));
        return Optional.of(new KeptTake(line.get(), StoredForm.unpacked(form, Assessment.class), rig));
    }

    Optional<byte[]> flac(long id) throws SQLException {
        return one("SELECT flac FROM audio WHERE take = ?", row -> row.getBytes(1), id);
    }

    boolean say(long id, TakeWords words) throws SQLException {
        return update("UPDATE take SET instrument = ?, venue = ?, note = ?, tags = ? WHERE id = ?", words.instrument(), words.venue(),
            words.note(), String.join(" ", words.tags()), id) == 1;
    }

    List<ReadingPoint> points(String name, TakeFilter filter) throws SQLException {
        Where where = new Where(filter);
        List<Object> values = new ArrayList<>(List.of(name));
        values.addAll(where.values());
        String query = "SELECT t.id, t.kept_millis, v.value FROM reading v JOIN take t ON t.id = v.take"
            + where.sqlAfter("v.name = ?") + " ORDER BY t.kept_millis, t.id";
        return many(query, row -> new ReadingPoint(row.getLong(1), row.getLong(2), row.getDouble(3)), values.toArray());
    }

    List<String> instruments() throws SQLException {
        return many("SELECT instrument FROM take WHERE instrument <> '' GROUP BY instrument ORDER BY COUNT(*) DESC, instrument", row -> row.getString(1));
    }

    private static TakeLine line(ResultSet row) throws SQLException {
        return new TakeLine(row.getLong(1), row.getString(2), time(row.getLong(3), row.getInt(4)), row.getString(5), row.getDouble(6),
            row.getString(7), row.getString(8), row.getString(9), row.getString(10), words(row.getString(11)), words(row.getString(12)), row.getBoolean(13));
    }

    static OffsetDateTime time(long millis, int offsetSeconds) {
        return Instant.ofEpochMilli(millis).atOffset(ZoneOffset.ofTotalSeconds(offsetSeconds));
    }

    private static List<String> words(String text) {
        return text.isEmpty() ? List.of() : List.of(text.split(" "));
    }

    /** What a row becomes. */
    interface FromRow<T> {
        T of(ResultSet row) throws SQLException;
    }

    private <T> Optional<T> one(String query, FromRow<T> made, Object... values) throws SQLException {
        return many(query, made, values).stream().findFirst();
    }

    private <T> List<T> many(String query, FromRow<T> made, Object... values) throws SQLException {
        return rows(connection, query, made, values);
    }

    private int update(String command, Object... values) throws SQLException {
        return update(connection, command, values);
    }

    static <T> List<T> rows(Connection connection, String query, FromRow<T> made, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(query)) {
            set(statement, values);
            List<T> all = new ArrayList<>();
            try (ResultSet rows = statement.executeQuery()) {
                while (rows.next()) {
                    all.add(made.of(rows));
                }
            }
            return all;
        }
    }

    static int update(Connection connection, String command, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(command)) {
            set(statement, values);
            return statement.executeUpdate();
        }
    }

    private static void set(PreparedStatement statement, Object... values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i]);
        }
    }
}
