/**
 * What keeps the records safe: the work of the night, backups and putting them back. In: an open
 * office, or a folder whose database cannot be opened any more. Out: copies, and words.
 */
@NullMarked
package rainward.daemon.keep;

import org.jspecify.annotations.NullMarked;
