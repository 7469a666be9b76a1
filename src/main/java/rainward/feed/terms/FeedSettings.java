package rainward.feed.terms;

import java.net.URI;
import java.time.Duration;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import rainward.farm.Require;

/**
 * What the feeds need to know from the settings.
 *
 * @param identity who asks
 * @param addresses base address by service where it is not the usual one; https, or http on
 *     loopback
 * @param pace time-outs and tries
 * @param openMeteo terms under which Open-Meteo may be asked; empty: not at all
 * @param gateway between this machine and the services
 */
public record FeedSettings(
        Identity identity,
        Map<Service, URI> addresses,
        Pace pace,
        Optional<OpenMeteoTerms> openMeteo,
        Gateway gateway) {

    public FeedSettings {
        addresses = Map.copyOf(addresses);
        addresses.forEach((service, address) -> Addresses.requireSafe(service.code(), address));
    }

    /** Usual addresses and pace. */
    public static FeedSettings usual(Identity identity) {
        return new FeedSettings(identity, Map.of(), Pace.USUAL, Optional.empty(), Gateway.NONE);
    }

    /** The same with another base address for a service, so that any server can stand in. */
    public FeedSettings at(Service service, URI address) {
        Map<Service, URI> changed = new EnumMap<>(Service.class);
        changed.putAll(addresses);
        changed.put(service, address);
        return new FeedSettings(identity, changed, pace, openMeteo, gateway);
    }

    /** The same through a gateway. */
    public FeedSettings through(Gateway other) {
        return new FeedSettings(identity, addresses, pace, openMeteo, other);
    }

    /** Base address of a service. */
    public URI address(Service service) {
        Service at = service == Service.NWS_ALERTS || service == Service.NWS_STATIONS
                ? Service.NWS
                : service;
        return addresses.getOrDefault(
                service, addresses.getOrDefault(at, URI.create(service.usualAddress())));
    }

    /**
     * Who asks: public services turn the nameless away.
     *
     * @param app name and version
     * @param contact mail address or page of the person who runs it
     */
    public record Identity(String app, String contact) {

        public Identity {
            Require.named("app", app);
            Require.named("contact", contact);
            Require.that(
                    (app + contact).chars().allMatch(c -> c > 31 && c < 127),
                    "app and contact go into an HTTP header, must be plain ASCII: " + contact);
        }

        /** Value of the User-Agent header. */
        public String userAgent() {
            return app + " (" + contact + ")";
        }
    }

    /**
     * How patiently and how often.
     *
     * @param connect longest wait for a connection
     * @param read longest silence within an answer
     * @param call longest time of a whole call, redirects and body included
     * @param inFlight requests at the same time, over all services
     * @param tries for one question within one pull
     * @param watchClock compare the PC's clock with the services' clocks
     */
    public record Pace(
            Duration connect,
            Duration read,
            Duration call,
            int inFlight,
            int tries,
            boolean watchClock) {

        /** Ten, thirty and sixty seconds, two at a time, three tries. */
        public static final Pace USUAL = new Pace(
                Duration.ofSeconds(10), Duration.ofSeconds(30), Duration.ofSeconds(60), 2, 3, true);

        public Pace {
            for (Duration limit : new Duration[] {connect, read, call}) {
                Require.that(
                        !limit.isNegative() && !limit.isZero(), "a time-out must be above zero");
            }
            Require.inRange("inFlight", inFlight, 1, 20);
            Require.inRange("tries", tries, 1, 5);
        }
    }

    /**
     * Why Open-Meteo may be asked: a key, or the user's word that the use is non-commercial.
     *
     * @param key of a paid plan; without it the free tier is used, which is for non-commercial use
     * @param ensembleModel which ensemble to ask for; empty: none
     */
    public record OpenMeteoTerms(Optional<String> key, Optional<String> ensembleModel) {

        /** Never shows the key. */
        @Override
        public String toString() {
            return "OpenMeteoTerms[" + (key.isPresent() ? "with a key" : "non-commercial") + ", "
                    + ensembleModel.orElse("no ensemble") + "]";
        }
    }
}
