/**
 * Files of the person and of the project, read into the nouns of {@code farm}.
 *
 * <p>In come field boundaries, lists of fields and the shared tables. Out come properties, fields,
 * species, mixes and seasons, or one clear sentence that names file, place and remedy.
 * {@code daemon} reads it.
 */
@NullMarked
package rainward.intake;

import org.jspecify.annotations.NullMarked;
