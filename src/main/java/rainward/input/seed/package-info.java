/**
 * How much seed a field takes, out of which bags, in which box, filled where.
 *
 * <p>In come mixes, tags, bags, boxes and the order of the work. Out come amounts by field and
 * component, bags to load, and fills along the route. {@code input.load} reads it.
 */
@NullMarked
package rainward.input.seed;

import org.jspecify.annotations.NullMarked;
