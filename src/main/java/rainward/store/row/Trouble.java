package rainward.store.row;

import java.util.function.Supplier;
import org.jdbi.v3.core.JdbiException;
import org.jdbi.v3.core.result.ResultSetException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Says what the database could not do, and what a person can do about it. */
public final class Trouble {

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
        return "the database refused (" + trouble.getMessage() + ").";
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
