package evenwood.journal;

import java.nio.file.Path;
import java.sql.SQLException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** What can be wrong with a journal's file, each in one line with what to do next. Source of the codes: SQLite, result codes. */
final class StoreProblems {
    private static final int PRIMARY_CODE = 0xFF;

    private StoreProblems() { }

    static JournalProblem of(Path file, SQLException problem) {
        int code = problem instanceof SQLiteException sqlite ? sqlite.getResultCode().code & PRIMARY_CODE : problem.getErrorCode() & PRIMARY_CODE;
        if (code == SQLiteErrorCode.SQLITE_FULL.code) {
            return new JournalProblem("journal: the disk under " + file + " is full; what was kept before is untouched;"
                + " free some space, or name a file on another disk with --journal FILE", problem).of(JournalTrouble.FULL, file.toString());
        }
        if (code == SQLiteErrorCode.SQLITE_BUSY.code || code == SQLiteErrorCode.SQLITE_LOCKED.code) {
            return new JournalProblem("journal: " + file + " is in use by another program just now; what was kept before is untouched;"
                + " close the other one and try again", problem).of(JournalTrouble.IN_USE, file.toString());
        }
        if (code == SQLiteErrorCode.SQLITE_READONLY.code || code == SQLiteErrorCode.SQLITE_CANTOPEN.code || code == SQLiteErrorCode.SQLITE_PERM.code) {
            return notWritable(file, problem);
        }
        if (code == SQLiteErrorCode.SQLITE_CORRUPT.code || code == SQLiteErrorCode.SQLITE_NOTADB.code) {
            return damaged(file, problem);
        }
        return new JournalProblem("journal: " + file + " cannot be used (" + firstLine(problem) + "); what was kept before is untouched;"
            + " check the disk, or name another file with --journal FILE", problem).of(JournalTrouble.UNUSABLE, file.toString());
    }

    static JournalProblem notWritable(Path file, Exception problem) {
        return new JournalProblem("journal: " + file + " cannot be opened for writing; what was kept before is untouched;"
            + " check the rights of the file and its folder, or name another file with --journal FILE", problem).of(JournalTrouble.NOT_WRITABLE, file.toString());
    }

    static JournalProblem damaged(Path file, Exception problem) {
        return new JournalProblem("journal: " + file + " is damaged or no journal (" + firstLine(problem) + "); nothing was changed in it;"
            + " copy what can still be read with evenwood journal backup FILE --salvage, or go back to a backup with evenwood journal restore FILE", problem).of(JournalTrouble.DAMAGED, file.toString());
    }

    private static String firstLine(Exception problem) {
        return String.valueOf(problem.getMessage()).lines().findFirst().orElse("no reason given");
    }
}
