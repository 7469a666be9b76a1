/**
 * Recorded answers of services, read again through the real clients.
 *
 * <p>In comes a folder of answers. Out comes a finding for each; {@code verify feed} prints them.
 */
@NullMarked
package rainward.feed.recorded;

import org.jspecify.annotations.NullMarked;
