package rainward.board.house;

import java.lang.reflect.Type;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * A result that a command prints with {@code --json}.
 *
 * @param name of the command
 * @param says what it tells
 * @param type of the result
 * @param result asked for each time; empty before the first order is worked out
 */
public record Sheet(String name, String says, Type type, Supplier<Optional<?>> result) {}
