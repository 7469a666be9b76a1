/**
 * Everything that must outlive the process, in one SQLite file or a PostgreSQL database.
 *
 * <p>Here the file itself is opened, brought up to date, locked and copied; the books in it lie in
 * the packages below, each by what it is about. Out come the same values as they were stored, by
 * name and by time; schema steps lose nothing. {@code daemon} opens it and hands it to the core
 * behind the core's own interfaces.
 */
@NullMarked
package rainward.store;

import org.jspecify.annotations.NullMarked;
