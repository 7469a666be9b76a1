package rainward.daemon.board;

import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rainward.board.BoardRules;
import rainward.board.door.Keyring;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Settings;

/** Where the board of an office listens, and to whom it answers. */
final class BoardPlace {

    private BoardPlace() {}

    static BoardRules rules(Office office, int port) {
        Settings.Board board = office.settings().board();
        Set<String> names = new LinkedHashSet<>(board.door().names());
        if (board.everyAddress()) {
            names.addAll(ownNames());
        }
        return new BoardRules(
                new BoardRules.Place(board.listen(), port, names, security(board.door())),
                office.home().path(),
                keyring(office),
                board.door().sessionEnds(),
                board.tiles());
    }

    /** Names and addresses by which the network knows this machine. */
    private static Set<String> ownNames() {
        Set<String> names = new LinkedHashSet<>();
        try {
            NetworkInterface.networkInterfaces()
                    .flatMap(NetworkInterface::inetAddresses)
                    .map(address -> address.getHostAddress().replaceFirst("%.*", ""))
                    .map(address -> address.contains(":") ? "[" + address + "]" : address)
                    .forEach(names::add);
            names.add(InetAddress.getLocalHost().getHostName());
        } catch (SocketException | UnknownHostException e) {
            // What cannot be found out can be set: names under [board].
        }
        return names;
    }

    private static BoardRules.Security security(Settings.Door door) {
        return door.given()
                .map(given -> new BoardRules.Security(
                        BoardRules.Security.Kind.GIVEN, List.of(given.file(), given.key())))
                .orElse(
                        switch (door.tls()) {
                            case NONE -> BoardRules.Security.PLAIN;
                            case SELF_MADE ->
                                new BoardRules.Security(
                                        BoardRules.Security.Kind.SELF_MADE, List.of());
                        });
    }

    /** On this machine alone nobody is asked; from the network everybody. */
    private static Optional<Keyring> keyring(Office office) {
        if (office.settings().board().thisMachineOnly()) {
            return Optional.empty();
        }
        PeopleBook people = new PeopleBook(office);
        if (people.people().isEmpty()) {
            throw Refusal.badInput("board.listen opens the board to the network, but nobody has a"
                    + " PIN: give one with `rainward door NAME --role lead`, or listen at"
                    + " 127.0.0.1.");
        }
        return Optional.of(people);
    }
}
