package rainward.board.door;

import java.util.List;
import java.util.Optional;

/** Who may come in from the network. */
public interface Keyring {

    List<Person> people();

    default Optional<Person> named(String name) {
        return people().stream().filter(p -> p.name().equals(name)).findFirst();
    }
}
