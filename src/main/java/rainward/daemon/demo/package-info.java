/**
 * The demo: an invented July of an invented crew, gone through on a clock of its own. In: the files
 * of {@code demo-forecasts} and {@code config}. Out: the same briefs and alerts that the service
 * writes, as files. Everything goes through the real desks; only the weather services and the clock
 * are stood in for.
 */
@NullMarked
package rainward.daemon.demo;

import org.jspecify.annotations.NullMarked;
