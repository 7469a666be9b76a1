/**
 * The settings file changed from a page: whole, or one entry by form. In: what was typed. Out: the
 * same file with that one change and all its comments, in force at once; or what is wrong with it.
 */
@NullMarked
package rainward.daemon.board.form;

import org.jspecify.annotations.NullMarked;
