/**
 * What a crew writes down about inputs: tags, stock, what went on the ground, sprays, harvests.
 *
 * <p>In comes what a person read, weighed or did. {@code store} keeps it as said; the arithmetic of
 * the other packages of {@code input} reads it.
 */
@NullMarked
package rainward.input.record;

import org.jspecify.annotations.NullMarked;
