/**
 * What is known about the ground: properties and fields, rain that fell on them, the soil's state.
 */
@NullMarked
package rainward.store.ground;

import org.jspecify.annotations.NullMarked;
