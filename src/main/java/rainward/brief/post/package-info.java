/**
 * Finished messages and the outbox they wait in.
 *
 * <p>In come a brief or an alert and the people who are to have it. Out come letters, one for each
 * person, and the order in which they are tried again. {@code store} keeps the outbox, {@code mail}
 * empties it.
 */
@NullMarked
package rainward.brief.post;

import org.jspecify.annotations.NullMarked;
