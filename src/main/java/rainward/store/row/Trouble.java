package rainward.store.row;

import java.sql.SQLException;
import java.util.Optional;
import java.util.function.Supplier;
import org.jdbi.v3.core.JdbiException;
import org.jdbi.v3.core.result.ResultSetException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Says what the database could not do, and what a person can do about it. */
public final class Trouble {

    /** No connection; the server stops or starts, has no room for us or lets nobody in. */
    private static final String ABSENT = "08.{3}|57P.{2}|53300|55000";

    private Trouble() {}

    public static <T> T told(Supplier<T> work) {
        try {
            return work.get();
        } catch (ResultSetException e) {
            throw Trouble.isDamage(e)
                    ? new StoreException(words(e), e)
                    : StoreException.damaged("a line cannot be read", e);
        } catch (JdbiException e) {
            throw new StoreException(words(e), e);
        }
    }

    /** Whether the database itself is broken, so that a backup is what helps. */
    static boolean isDamage(Throwable trouble) {
        for (Throwable t = trouble; t != null; t = t.getCause()) {
            if (t instanceof SQLiteException sqlite) {
                SQLiteErrorCode code = primary(sqlite.getResultCode());
                return code == SQLiteErrorCode.SQLITE_CORRUPT
                        || code == SQLiteErrorCode.SQLITE_NOTADB;
            }
        }
        return false;
    }

    public static String words(Throwable trouble) {
        for (Throwable t = trouble; t != null; t = t.getCause()) {
            if (t instanceof SQLiteException sqlite) {
                return words(sqlite.getResultCode(), String.valueOf(sqlite.getMessage()));
            }
        }
        return server(trouble)
                .map(Trouble::words)
                .orElseGet(() -> "the database refused (" + trouble.getMessage() + ").");
    }

    /** Whether the server that keeps the database does not answer, so that waiting helps. */
    static boolean isAbsence(Throwable trouble) {
        return server(trouble).filter(e -> state(e).matches(ABSENT)).isPresent();
    }

    /** What a server said, the innermost first: a pool wraps it in words of its own. */
    private static Optional<SQLException> server(Throwable trouble) {
        Optional<SQLException> said = Optional.empty();
        for (Throwable t = trouble; t != null; t = t.getCause()) {
            if (t instanceof SQLException e && !(e instanceof SQLiteException)) {
                said = Optional.of(e);
            }
        }
        return said;
    }

    private static String state(SQLException e) {
        return String.valueOf(e.getSQLState());
    }

    /** Classes of SQLSTATE: ISO/IEC 9075-2, and appendix A of the PostgreSQL manual. */
    private static String words(SQLException e) {
        String state = state(e);
        String said = "(" + String.valueOf(e.getMessage()).lines().findFirst().orElse("") + ")";
        if (state.matches(ABSENT)) {
            return "the database server does not answer " + said + "; check that it runs and can be"
                    + " reached from here.";
        }
        if (state.startsWith("28")) {
            return "the database server does not let us in " + said + "; check user and password"
                    + " under [store].";
        }
        return switch (state) {
            case "3D000" ->
                "the server has no such database " + said + "; make it there, or check url under"
                        + " [store].";
            case "42501" ->
                "the server does not allow that " + said + "; let the user own the database.";
            case "53100" ->
                "the disk of the server is full; make room, nothing that was stored before is"
                        + " lost.";
            case "55P03", "40P01", "57014" ->
                "another process kept the database for too long; try again.";
            default -> "the database refused " + said + ".";
        };
    }

    private static String words(SQLiteErrorCode code, String message) {
        return switch (primary(code)) {
            case SQLITE_FULL ->
                "the disk is full; make room, nothing that was stored before is lost.";
            case SQLITE_READONLY, SQLITE_CANTOPEN, SQLITE_PERM ->
                "the database cannot be written; check the permissions of the data folder.";
            case SQLITE_CORRUPT, SQLITE_NOTADB ->
                "the database is damaged or is not one; keep a copy of it and put back the last"
                        + " backup.";
            case SQLITE_BUSY, SQLITE_LOCKED ->
                "another process kept the database for too long; try again.";
            case SQLITE_IOERR ->
                "the disk could not be read or written; check it, and the room left on it.";
            default -> "the database refused (" + message + ").";
        };
    }

    /** The low byte of a result code tells its sort. */
    private static SQLiteErrorCode primary(SQLiteErrorCode code) {
        return SQLiteErrorCode.getErrorCode(code.code & 0xff);
    }
}
