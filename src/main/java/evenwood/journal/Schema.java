package evenwood.journal;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * Which tables a journal has, and how an older one becomes a newer one.
 *
 * <p>How: {@code schema-N.sql} takes a journal from version N−1 to N; the file's {@code user_version} says where it stands.
 * All steps happen in one transaction, after a copy of the old file was laid beside it. Why no migration library:
 * docs/decisions/0007.
 */
final class Schema {
    static final int NEWEST = 1;
    /** "Evnw": tells our files from other programs' databases. */
    private static final int APPLICATION_ID = 0x45766E77;

    private final Path file;
    private final Connection connection;

    Schema(Path file, Connection connection) {
        this.file = file;
        this.connection = connection;
    }

    /** @throws JournalProblem when it is newer than this program, or somebody else's */
    void bringUpToDate() throws SQLException {
        int version = version();
        if (version == NEWEST) {
            return;
        }
        if (version > 0) {
            keepCopy(version);
        }
        try (Statement statement = connection.createStatement()) {
            // Another process may be doing the same: whoever comes second finds it done.
            statement.execute("BEGIN IMMEDIATE");
            try {
                for (int next = version() + 1; next <= NEWEST; next++) {
                    run(statement, script(next));
                    statement.execute("PRAGMA user_version = " + next);
                }
                statement.execute("PRAGMA application_id = " + APPLICATION_ID);
                statement.execute("COMMIT");
            } catch (SQLException problem) {
                statement.execute("ROLLBACK");
                throw problem;
            }
        }
    }

    /** @return 0 for a new, empty file */
    int version() throws SQLException {
        int version = number("PRAGMA user_version");
        boolean ours = number("PRAGMA application_id") == APPLICATION_ID;
        if (!ours && (version != 0 || number("SELECT COUNT(*) FROM sqlite_master") > 0)) {
            throw new JournalProblem("journal: " + file + " is the database of another program; nothing was changed in it; name another file with --journal FILE")
                .of(JournalTrouble.FOREIGN, file.toString());
        }
        if (version > NEWEST) {
            throw new JournalProblem("journal: " + file + " was written by a newer evenwood (its form is number " + version + ", this one knows up to "
                + NEWEST + "); nothing was changed in it; use the newer evenwood, or name another file with --journal FILE")
                .of(JournalTrouble.NEWER, file.toString());
        }
        return version;
    }

    private void keepCopy(int version) throws SQLException {
        Path copy = file.resolveSibling(file.getFileName() + ".before-form-" + (version + 1));
        if (!java.nio.file.Files.exists(copy)) {
            try (var copying = connection.prepareStatement("VACUUM INTO ?")) {
                copying.setString(1, copy.toString());
                copying.execute();
            }
        }
    }

    private int number(String query) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet result = statement.executeQuery(query)) {
            return result.next() ? result.getInt(1) : 0;
        }
    }

    private static void run(Statement statement, String script) throws SQLException {
        for (String each : script.replaceAll("(?m)^--.*$", "").split(";\\s*\\R")) {
            if (!each.isBlank()) {
                statement.execute(each);
            }
        }
    }

    private static String script(int version) {
        try (InputStream script = Schema.class.getResourceAsStream("schema-" + version + ".sql")) {
            return new String(script.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
    }
}
