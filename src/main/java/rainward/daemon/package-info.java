/**
 * The program itself: commands, settings, the clock, the jobs and the wiring.
 *
 * <p>In come the command line, the settings file and the time of day; each job reads the clock once
 * and passes the instant on. Out come exit codes, printed results and the running service. It is
 * the only package that sees all others, and no other package sees it.
 */
@NullMarked
package rainward.daemon;

import org.jspecify.annotations.NullMarked;
