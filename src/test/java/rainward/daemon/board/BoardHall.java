package rainward.daemon.board;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import rainward.board.door.Person;
import rainward.board.door.PinHash;
import rainward.board.door.Role;

/**
 * One browser, one board of this machine and one that is open to the network, for all test classes
 * that ask for them; shut when the last one is done.
 */
final class BoardHall implements BeforeAllCallback {

    private static final ExtensionContext.Namespace HERE =
            ExtensionContext.Namespace.create(BoardHall.class);

    private static final String NETWORK = """

            [board]
            listen = "0.0.0.0"
            """;

    private static volatile ExtensionContext.@Nullable Store store;

    @Override
    public void beforeAll(ExtensionContext context) {
        store = context.getRoot().getStore(HERE);
    }

    private static <V> V kept(Object key, Supplier<V> made, Class<V> type) {
        ExtensionContext.Store open = store;
        if (open == null) {
            throw new IllegalStateException("the class lacks @ExtendWith(BoardHall.class)");
        }
        return open.getOrComputeIfAbsent(key, missing -> made.get(), type);
    }

    /** A board in a folder of its own that is removed at the end. */
    private static final class Placed implements AutoCloseable {

        private final Path home;
        private final BoardStage stage;

        Placed(String more, List<Person> people) {
            try {
                home = Files.createTempDirectory("board");
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            stage = new BoardStage(home, more, people);
        }

        @Override
        public void close() throws IOException {
            stage.close();
            try (Stream<Path> all = Files.walk(home)) {
                for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(path);
                }
            }
        }
    }

    static Chromium chromium() {
        return kept(Chromium.class, Chromium::start, Chromium.class);
    }

    /** The board that only this machine can see. */
    static BoardStage ofThisMachine() {
        return kept("this machine", () -> new Placed("", List.of()), Placed.class).stage;
    }

    /** The board that is open to the network: Dell leads, Tobin is crew, Visitor may look. */
    static BoardStage ofTheNetwork() {
        return kept("network", () -> new Placed(NETWORK, people()), Placed.class).stage;
    }

    private static List<Person> people() {
        return List.of(
                new Person("Dell", Role.LEAD, PinHash.of("481516")),
                new Person("Tobin", Role.CREW, PinHash.of("602214")),
                new Person("Visitor", Role.READ, PinHash.of("271828")));
    }
}
