package rainward.daemon.board;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rainward.board.door.Keyring;
import rainward.board.door.Person;
import rainward.daemon.office.Office;

/** Who may come in from the network, kept in the records. */
public final class PeopleBook implements Keyring {

    private static final String NAME = "board people";

    private final Office office;

    public PeopleBook(Office office) {
        this.office = office;
    }

    /** All of them. */
    record People(List<Person> people) {}

    @Override
    public List<Person> people() {
        return office.store()
                .read(books -> books.lastKnown().find(NAME, People.class))
                .map(People::people)
                .orElse(List.of());
    }

    /** Lets somebody in, or gives them another PIN or role. */
    public void admit(Person person) {
        change(person.name(), List.of(person));
    }

    /** Shuts the door for somebody; false where they could not come in before. */
    public boolean dismiss(String name) {
        boolean known = named(name).isPresent();
        change(name, List.of());
        return known;
    }

    private void change(String name, List<Person> now) {
        office.store().inTransaction(books -> {
            List<Person> all = new ArrayList<>(now);
            books.lastKnown().find(NAME, People.class).stream()
                    .flatMap(before -> before.people().stream())
                    .filter(person -> !person.name().equals(name))
                    .forEach(all::add);
            all.sort(Comparator.comparing(Person::name));
            books.lastKnown().put(NAME, office.now(), new People(all));
            return all;
        });
    }
}
