/**
 * Whom we ask and on what terms: services, addresses, patience.
 *
 * <p>In come the settings. Out come what each service asks of its users and where it is reached;
 * {@code wire} keeps to it.
 */
@NullMarked
package rainward.feed.terms;

import org.jspecify.annotations.NullMarked;
