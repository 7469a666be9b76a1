package rainward.daemon.office;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.daemon.settings.Settings;
import rainward.feed.terms.FeedSettings;
import rainward.feed.terms.Gateway;
import rainward.feed.terms.Pacing;
import rainward.feed.terms.Service;
import rainward.feed.wire.PoliteClient;

/** Turns the settings of weather into what the feeds want to know. */
final class FeedDoor {

    private FeedDoor() {}

    /** A client as the settings want it, with the copies and pauses of the records. */
    static PoliteClient client(Office office, Pacing pacing) {
        return new PoliteClient(
                settings(office.settings().weather(), pacing),
                office.store().copies(),
                office.store().pauses(),
                pacing);
    }

    private static FeedSettings settings(Settings.Weather weather, Pacing pacing) {
        String version = Optional.ofNullable(FeedDoor.class.getPackage().getImplementationVersion())
                .orElse("dev");
        FeedSettings feed = new FeedSettings(
                new FeedSettings.Identity("rainward/" + version, weather.contact()),
                Map.of(),
                pace(weather.pace(), pacing),
                weather.openMeteo()
                        .map(terms -> new FeedSettings.OpenMeteoTerms(
                                terms.key().map(key -> key.reveal()), terms.ensemble())),
                gateway(weather.way()));
        for (var address : weather.way().addresses().entrySet()) {
            feed = feed.at(service(address.getKey()), address.getValue());
            if (address.getKey() == Settings.Server.OPEN_METEO) {
                // One relay answers both: the ensemble has a path of its own.
                feed = feed.at(Service.OPEN_METEO_ENSEMBLE, address.getValue());
            }
        }
        return feed;
    }

    private static FeedSettings.Pace pace(Settings.Pace pace, Pacing pacing) {
        return new FeedSettings.Pace(
                pace.connect(),
                pace.answer(),
                pace.call(),
                pace.inFlight(),
                pace.tries(),
                pacing.isReal());
    }

    private static Service service(Settings.Server server) {
        return switch (server) {
            case NWS -> Service.NWS;
            case MET_NORWAY -> Service.MET_NORWAY;
            case OPEN_METEO -> Service.OPEN_METEO;
            case STAGE4 -> Service.STAGE4;
            case ACIS -> Service.ACIS;
            case SOIL_SURVEY -> Service.SOIL_SURVEY;
            case SOIL_GRIDS -> Service.SOIL_GRIDS;
        };
    }

    static Gateway gateway(Settings.Way way) {
        return new Gateway(
                way.proxy().map(FeedDoor::address),
                way.authority().map(FeedDoor::certificates).orElse(List.of()));
    }

    private static InetSocketAddress address(String hostAndPort) {
        URI uri = URI.create("proxy://" + hostAndPort);
        return InetSocketAddress.createUnresolved(uri.getHost(), uri.getPort());
    }

    private static List<X509Certificate> certificates(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return CertificateFactory.getInstance("X.509").generateCertificates(in).stream()
                    .map(X509Certificate.class::cast)
                    .toList();
        } catch (IOException | CertificateException e) {
            throw Refusal.badInput(file + " held certificates when the settings were read and does"
                    + " not any more: put the file back.");
        }
    }
}
