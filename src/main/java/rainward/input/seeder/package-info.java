/**
 * Whether the seeder puts down what it should.
 *
 * <p>In come a catch of seed, what is left in the boxes, and settings tried before. Out come the
 * true rate, the setting to try, and how sure that is. {@code input.load} reads it.
 */
@NullMarked
package rainward.input.seeder;

import org.jspecify.annotations.NullMarked;
