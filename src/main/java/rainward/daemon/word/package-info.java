/**
 * What people say, taken down: stages done, fields pinned or held, gauges read, stands looked at.
 * In: words of a command or of the board, and the books of one transaction. Out: lines in the
 * records and one sentence for the person. Every word can be said twice without harm.
 */
@NullMarked
package rainward.daemon.word;

import org.jspecify.annotations.NullMarked;
