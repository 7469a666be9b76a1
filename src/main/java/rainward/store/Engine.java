package rainward.store;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import javax.sql.DataSource;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * What each database engine does in its own way. All other statements of the store are one text
 * that every engine takes.
 */
interface Engine {

    /** Where the database is, as messages name it. */
    String place();

    /** Connections, each with what the engine needs to be told. */
    DataSource source();

    /** How long a piece of work waits for a connection. */
    Duration patience();

    /**
     * Keeps the database for one service, where the lock of a folder does not.
     *
     * @throws rainward.store.row.StoreException where another service has it
     */
    Store.Hold alone();

    /** A schema step, written for SQLite, in the words of this engine. */
    String step(String sql);

    /** There is no way back from a step: keeps what an older program can open, where it can. */
    void keepAsItWas(Connection connection, int version) throws SQLException;

    /** Lets one piece of work write at a time: what it read stays true until it has written. */
    void queueUp(Handle handle);

    /**
     * Reads the state of one moment, while others write on.
     *
     * @param folder where a file may be laid down meanwhile
     */
    void atOneMoment(Jdbi jdbi, Path folder, Reading reading) throws SQLException, IOException;

    /** Reads through a bare connection, which is not to be kept. */
    interface Reading {
        void from(Connection connection) throws SQLException, IOException;
    }

    /** The last number that was given to a row of a table, 0 where none was. */
    long lastNumber(Connection connection, String table) throws SQLException;

    /** Numbers of a table go on after this one. */
    void numberOn(Connection connection, String table, long last) throws SQLException;

    /** Looks through the whole database; {@code ok} where it is sound. */
    String soundness(Handle handle);

    /** Whether {@link #copyInto} can be asked, or copies are the server's own affair. */
    boolean makesCopies();

    /**
     * Copies the database, as it is at one moment, into an empty file.
     *
     * @throws rainward.store.row.StoreException where that cannot be done
     */
    void copyInto(Handle handle, Path empty);
}
