package rainward.board.door;

import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/**
 * Names under which the board answers. A page of a stranger that points its own name at this
 * machine is turned away here, because the browser still sends the stranger's name.
 *
 * @param names lower case, without port
 */
public record HostNames(Set<String> names) {

    private static final Set<String> OWN = Set.of("localhost", "127.0.0.1", "[::1]");

    public HostNames {
        names = Set.copyOf(names);
    }

    /** The machine's own names, the address that is listened on, and those of the settings. */
    public static HostNames of(String listen, Set<String> more) {
        Set<String> all = new TreeSet<>(OWN);
        all.add(listen.contains(":") ? "[" + listen + "]" : listen);
        more.forEach(name -> all.add(name.toLowerCase(Locale.ROOT)));
        return new HostNames(all);
    }

    /** True where the Host header names this board. */
    boolean own(String hostHeader) {
        String host = hostHeader.toLowerCase(Locale.ROOT).replaceFirst(":\\d{1,5}$", "");
        return names.contains(host);
    }
}
