/**
 * Everything that must outlive the process, in one SQLite file.
 *
 * <p>In come forecasts, soil states, plans, records of work and mails on their way out. Out come
 * the same values as they were stored, by name and by time; schema steps lose nothing.
 * {@code daemon} opens it and hands it to the core behind the core's own interfaces.
 */
@NullMarked
package rainward.store;

import org.jspecify.annotations.NullMarked;
