/**
 * Where things stand in the board's drawings. In: plan, rain, chances, boundaries. Out: positions
 * as values, which the pages draw as SVG; positions along time are shares of the width, so that a
 * drawing fits a telephone and a wall screen without shrinking its letters.
 */
@NullMarked
package rainward.board.picture;

import org.jspecify.annotations.NullMarked;
