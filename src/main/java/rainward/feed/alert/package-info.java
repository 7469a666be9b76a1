/**
 * Public alerts for a place (CAP terms).
 *
 * <p>In come a place and a moment. Out come the alerts in force and those that others replace;
 * {@code daemon} keeps them in a ledger.
 */
@NullMarked
package rainward.feed.alert;

import org.jspecify.annotations.NullMarked;
