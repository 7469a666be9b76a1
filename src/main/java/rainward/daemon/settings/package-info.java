/**
 * The settings file, read strictly and turned into what each package asks for.
 *
 * <p>In comes one TOML file in the units its writer chose. Out come checked values in SI, or every
 * fault of the file at once, each with its line and what would be right. {@code daemon} hands the
 * values to the packages; nobody else reads the file.
 */
@NullMarked
package rainward.daemon.settings;

import org.jspecify.annotations.NullMarked;
