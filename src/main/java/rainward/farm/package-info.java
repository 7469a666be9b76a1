/**
 * The nouns of the trade: fields, properties, soil textures, mixes, recipes, crew and machines.
 *
 * <p>In come names, boundaries and quantities in the units people write; they are turned into SI at
 * the door and refused in one sentence when they cannot be true. Out come checked values that never
 * change, and half-open windows of time. {@code weather} and every later package read them.
 */
@NullMarked
package rainward.farm;

import org.jspecify.annotations.NullMarked;
