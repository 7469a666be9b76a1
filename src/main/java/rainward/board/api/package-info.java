/**
 * The board for programs: JSON under a versioned path with its OpenAPI document, a calendar, and
 * metrics in the Prometheus text form. In: the same house as the pages. Out: what the commands
 * print with {@code --json}, under the same names.
 */
@NullMarked
package rainward.board.api;

import org.jspecify.annotations.NullMarked;
