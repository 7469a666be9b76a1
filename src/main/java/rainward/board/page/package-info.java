/**
 * The pages. In: how things stand and who looks. Out: HTML, drawn by the templates in
 * {@code src/main/jte}; each page is a record whose components the template shows, so that a
 * template decides nothing.
 */
@NullMarked
package rainward.board.page;

import org.jspecify.annotations.NullMarked;
