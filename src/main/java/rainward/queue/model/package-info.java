/**
 * A planning problem turned into a shop.
 *
 * <p>In come fields, crew and hours as the farm knows them. Out come minutes and indices, and of
 * each field that cannot be planned at all, why. {@code plan} and {@code bound} read it.
 */
@NullMarked
package rainward.queue.model;

import org.jspecify.annotations.NullMarked;
