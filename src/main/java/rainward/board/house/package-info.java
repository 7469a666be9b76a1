/**
 * What the board shows and takes down, as the rest of the program hands it over. In: what a running
 * service knows. Out: values that the pages and the JSON are made of. The daemon implements the two
 * interfaces; nothing here knows of a database.
 */
@NullMarked
package rainward.board.house;

import org.jspecify.annotations.NullMarked;
