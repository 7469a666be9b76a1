package rainward.daemon.settings;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rainward.daemon.settings.Settings.Server;

/**
 * How the public servers are reached from an office: other addresses, a proxy, an authority of the
 * house.
 *
 * @param settings file, against whose folder paths are taken
 */
record WayReader(Path settings) {

    private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");

    Settings.Way way(Section weather) {
        Map<Server, URI> addresses = addresses(weather.table("address"));
        Section network = weather.table("network");
        Settings.Way way = new Settings.Way(addresses, proxy(network), authority(network));
        network.end();
        return way;
    }

    private static Optional<String> proxy(Section network) {
        String remedy = "must be host:port of the proxy, for instance \"proxy.farm.example:3128\"";
        Optional<String> proxy = network.maybeText("proxy", remedy);
        boolean right = proxy.filter(text -> !isProxy(text)).isEmpty();
        if (!right) {
            network.wrong("proxy", remedy);
        }
        return right ? proxy : Optional.empty();
    }

    private static boolean isProxy(String text) {
        try {
            URI uri = new URI("proxy://" + text);
            return uri.getHost() != null
                    && uri.getPort() > 0
                    && uri.getPort() < 65_536
                    && uri.getUserInfo() == null
                    && uri.getPath().isEmpty();
        } catch (URISyntaxException e) {
            return false;
        }
    }

    private Optional<Path> authority(Section network) {
        String remedy = "must be a file with the certificate of an authority in PEM or DER form";
        Optional<Path> file = network.maybeText("authority_file", remedy)
                .map(text -> settings.toAbsolutePath().resolveSibling(text));
        if (file.isPresent() && !holdsCertificates(file.get())) {
            network.wrong("authority_file", remedy);
            return Optional.empty();
        }
        return file;
    }

    private static boolean holdsCertificates(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return !CertificateFactory.getInstance("X.509")
                    .generateCertificates(in)
                    .isEmpty();
        } catch (IOException | CertificateException e) {
            return false;
        }
    }

    private static Map<Server, URI> addresses(Section section) {
        Map<Server, URI> addresses = new EnumMap<>(Server.class);
        for (Server server : Server.values()) {
            String key = server.name().toLowerCase(Locale.ROOT);
            String remedy =
                    "must be the base address of a server: https://..., or http://localhost...";
            section.maybeText(key, remedy).ifPresent(text -> {
                Optional<URI> address = address(text);
                address.ifPresentOrElse(
                        uri -> addresses.put(server, uri), () -> section.wrong(key, remedy));
            });
        }
        section.end();
        return addresses;
    }

    /** A safe base address, if it is one. */
    static Optional<URI> address(String text) {
        try {
            URI uri = new URI(text);
            boolean safe = "https".equals(uri.getScheme())
                    || "http".equals(uri.getScheme())
                            && LOOPBACK.contains(String.valueOf(uri.getHost()));
            boolean base = uri.getHost() != null
                    && uri.getUserInfo() == null
                    && uri.getQuery() == null
                    && uri.getFragment() == null;
            return safe && base ? Optional.of(uri) : Optional.empty();
        } catch (URISyntaxException e) {
            return Optional.empty();
        }
    }
}
