/** What the weather services answered, which answers still hold, and whom to leave alone. */
@NullMarked
package rainward.store.forecast;

import org.jspecify.annotations.NullMarked;
