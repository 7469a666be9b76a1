/**
 * Water and heat stepped together, through a past or along every trace, and what is kept of it.
 *
 * <p>{@code cycle} and {@code soil.verify} read it.
 */
@NullMarked
package rainward.soil.column;

import org.jspecify.annotations.NullMarked;
