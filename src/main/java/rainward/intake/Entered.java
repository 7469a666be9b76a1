package rainward.intake;

import java.time.LocalDate;
import java.util.Optional;

/**
 * One line of a table of records.
 *
 * @param line of the file, counted from 1
 * @param field that it is about, if it is about one
 * @param on day that it is of
 * @param entry what it tells
 */
public record Entered(String line, Optional<String> field, LocalDate on, Object entry) {}
