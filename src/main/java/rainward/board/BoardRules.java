package rainward.board;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rainward.board.door.HostNames;
import rainward.board.door.Keyring;

/**
 * Where the board listens, and to whom it answers.
 *
 * @param place where it listens
 * @param folder for sessions and the certificate
 * @param keyring who may come in from the network; empty: this machine only
 * @param sessionEnds after so long without a look at a page
 * @param tiles address of map tiles, with {z}, {x} and {y}; empty: the map is drawn from the fields
 */
public record BoardRules(
        Place place,
        Path folder,
        Optional<Keyring> keyring,
        Duration sessionEnds,
        Optional<String> tiles) {

    /**
     * Where it listens.
     *
     * @param listen address of this machine
     * @param port 1 to 65535; 0: any that is free
     * @param names more names that it answers to
     * @param security of the connection
     */
    public record Place(String listen, int port, Set<String> names, Security security) {
        public Place {
            names = Set.copyOf(names);
        }

        HostNames hosts() {
            return HostNames.of(listen, names);
        }
    }

    /**
     * How the connection is kept from listeners.
     *
     * @param kind plain, self-made certificate or a given one
     * @param files of a given certificate
     */
    public record Security(Kind kind, List<Path> files) {

        public static final Security PLAIN = new Security(Kind.PLAIN, List.of());

        public Security {
            files = List.copyOf(files);
        }

        /** Sorts of security. */
        public enum Kind {
            PLAIN,
            SELF_MADE,
            GIVEN
        }
    }

    /** The server that tiles come from, as a content policy names it. */
    Optional<String> tileServer() {
        return tiles.map(address -> address.replaceFirst("^(https?://[^/]+).*$", "$1"));
    }
}
