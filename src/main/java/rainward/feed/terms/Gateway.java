package rainward.feed.terms;

import java.net.InetSocketAddress;
import java.security.cert.X509Certificate;
import java.util.List;
import java.util.Optional;

/**
 * What stands between an office and the public services. There is no way to switch the proof of who
 * answers off.
 *
 * @param proxy to go through, its name not yet looked up; empty: as this machine is set
 * @param authorities trusted beside those that Java trusts
 */
public record Gateway(Optional<InetSocketAddress> proxy, List<X509Certificate> authorities) {

    /** As this machine is set, and nobody else trusted. */
    public static final Gateway NONE = new Gateway(Optional.empty(), List.of());

    public Gateway {
        authorities = List.copyOf(authorities);
    }
}
