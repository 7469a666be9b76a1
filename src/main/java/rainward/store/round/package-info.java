/**
 * What a round decided and sent: orders, windows, briefs, the outbox, jobs done, the newest of
 * each.
 */
@NullMarked
package rainward.store.round;

import org.jspecify.annotations.NullMarked;
