/**
 * What a field takes: seed, seeder setting, lime, fertilizer, loads and stock.
 *
 * <p>In come acres, mixes, soil tests, box and spreader sizes and what is left in store. Out come
 * amounts by field, loads by machine, the setting that follows from a check of the box, and what is
 * short. {@code brief} prints them on the load sheet.
 */
@NullMarked
package rainward.input;

import org.jspecify.annotations.NullMarked;
