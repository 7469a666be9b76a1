/**
 * When each job is due. In: a time table and the work itself. Out: calls of that work, also after
 * the PC slept or was off. Only {@code rainward.daemon} reads it. Quartz keeps the triggers in a
 * database file of its own, so that its locks never wait for ours. Every job can run twice without
 * harm: what it did is logged by job and due slot.
 */
@NullMarked
package rainward.daemon.schedule;

import org.jspecify.annotations.NullMarked;
