package rainward.daemon.command;

import java.io.Console;
import java.security.SecureRandom;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.board.door.Person;
import rainward.board.door.PinHash;
import rainward.board.door.Role;
import rainward.daemon.board.PeopleBook;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;

/** Says who may come to the board from the network. */
@Command(
        name = "door",
        description = {
            "Say who may come to the board from the network, each with a PIN.",
            "",
            "Without a name: who may. With one: that person gets a PIN, typed unseen, or drawn and",
            "printed once where nobody types. Kept is a slow hash only. Roles: read sees all; crew",
            "says what was done, seen and measured; lead also drops fields and mends the mail."
        })
public final class DoorCommand extends OfficeCommand {

    private static final int DRAWN_DIGITS = 6;

    @Parameters(index = "0", arity = "0..1", paramLabel = "NAME", description = "Who.")
    @Nullable
    String name;

    @Option(names = "--role", paramLabel = "ROLE", description = "read, crew or lead; else crew.")
    String role = "crew";

    @Option(names = "--shut", description = "That person may not come in any more, at once.")
    boolean shut;

    /** Somebody who may come in, as JSON shows it. */
    record Admitted(String name, String role) {}

    @Override
    protected int work(Office office) {
        PeopleBook people = new PeopleBook(office);
        String who = name;
        if (who == null) {
            List<Admitted> all = people.people().stream()
                    .map(p -> new Admitted(p.name(), word(p.role())))
                    .toList();
            show(all, () -> text(all));
            return 0;
        }
        Admitted admitted = new Admitted(who.strip(), word(meant()));
        String words = shut ? dismiss(people, who.strip()) : admit(people, admitted);
        show(admitted, () -> words);
        return 0;
    }

    private static String text(List<Admitted> all) {
        return all.isEmpty()
                ? "Nobody: the board answers on this machine alone."
                : String.join(
                        System.lineSeparator(),
                        all.stream().map(p -> p.name() + ", " + p.role()).toList());
    }

    private static String word(Role role) {
        return role.name().toLowerCase(Locale.ROOT);
    }

    private Role meant() {
        for (Role one : Role.values()) {
            if (word(one).equals(role.strip().toLowerCase(Locale.ROOT))) {
                return one;
            }
        }
        throw Refusal.badInput("'" + role + "' is no role: write read, crew or lead.");
    }

    private static String dismiss(PeopleBook people, String who) {
        return people.dismiss(who)
                ? who + " may not come in any more."
                : who + " could not come in before.";
    }

    private String admit(PeopleBook people, Admitted admitted) {
        Console console = System.console();
        String pin = console == null ? drawn() : typed(console, admitted.name());
        people.admit(new Person(admitted.name(), meant(), PinHash.of(pin)));
        return admitted.name() + " may come in as " + admitted.role()
                + (console == null ? " with the PIN " + pin + ", told this once." : ".");
    }

    private static String typed(Console console, String who) {
        String pin = new String(console.readPassword("PIN of %s: ", who));
        String fault = PinHash.faultOf(pin);
        if (!fault.isEmpty()) {
            throw Refusal.badInput("Not taken: " + fault + ".");
        }
        if (!pin.equals(new String(console.readPassword("once more: ")))) {
            throw Refusal.badInput("The two are not the same; nothing was changed.");
        }
        return pin;
    }

    private static String drawn() {
        SecureRandom random = new SecureRandom();
        String pin;
        do {
            StringBuilder digits = new StringBuilder();
            random.ints(DRAWN_DIGITS, 0, 10).forEach(digits::append);
            pin = digits.toString();
        } while (!PinHash.faultOf(pin).isEmpty());
        return pin;
    }
}
