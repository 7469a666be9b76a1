/** What all books write with: columns, records as text, packed bytes, and trouble put in words. */
@NullMarked
package rainward.store.row;

import org.jspecify.annotations.NullMarked;
