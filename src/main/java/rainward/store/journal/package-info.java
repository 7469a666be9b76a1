/**
 * What was done on the fields and said about them, and what came up.
 *
 * <p>In comes one line at a time, never rewritten; out comes where each field stands.
 */
@NullMarked
package rainward.store.journal;

import org.jspecify.annotations.NullMarked;
