/**
 * The commands that people type. In: arguments. Out: lines on the screen or JSON, and an exit code:
 * 0 done, 1 the world stands in the way, 2 what was typed or set is wrong. They do their work at
 * the desks of {@code office}.
 */
@NullMarked
package rainward.daemon.command;

import org.jspecify.annotations.NullMarked;
