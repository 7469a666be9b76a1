package rainward.daemon.settings;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.brief.post.Recipient;
import rainward.brief.post.RetrySchedule;
import rainward.farm.Crew;
import rainward.farm.Mix;
import rainward.farm.Recipe;
import rainward.farm.UnitSystem;
import rainward.queue.problem.PlanProblem;
import rainward.window.WindowRules;

/**
 * Everything that the settings file says, in SI.
 *
 * @param farm whose it is
 * @param database server that keeps the records; without one a file of the data folder does
 * @param keeping how long things are kept
 * @param weather whom to ask, and how
 * @param soil where fields do not say
 * @param work who works, and how
 * @param inputs what goes on and into the ground
 * @param order how the queue is made
 * @param window when an alert goes out
 * @param mail how mail goes out, and to whom
 * @param board the local page
 */
public record Settings(
        Farm farm,
        Optional<Database> database,
        Keeping keeping,
        Weather weather,
        Soil soil,
        Work work,
        InputSettings inputs,
        Order order,
        StormAlerts window,
        Post mail,
        Board board) {

    /** The same with the crew, machines, recipes, mixes, inputs and prices of others. */
    public Settings working(Settings other) {
        return new Settings(
                farm,
                database,
                keeping,
                weather,
                soil,
                other.work,
                other.inputs,
                other.order,
                window,
                mail,
                board);
    }

    /** The same with other weather: where another server stands in for the services. */
    public Settings with(Weather other) {
        return new Settings(
                farm, database, keeping, other, soil, work, inputs, order, window, mail, board);
    }

    /**
     * Whose settings.
     *
     * @param name of the farm or crew, as mails show it
     * @param zone of its days
     * @param units people read, where a recipient does not say otherwise
     * @param region whose dates of sowing hold
     */
    public record Farm(String name, ZoneId zone, UnitSystem units, String region) {}

    /**
     * A server that keeps the records.
     *
     * @param url JDBC address of the database
     * @param user whom the server knows
     * @param password none where the server does not ask
     */
    public record Database(String url, String user, Optional<Secret> password) {}

    /**
     * How long things are kept in the data folder.
     *
     * @param forecasts answers of forecast services as they came
     * @param mail messages that went out
     * @param backups how many copies of the database
     * @param backupFolder where they lie; relative to the data folder
     */
    public record Keeping(Duration forecasts, Duration mail, int backups, Path backupFolder) {}

    /**
     * Whom to ask for weather, and how.
     *
     * @param sources of forecasts
     * @param observed analyses of what fell that are asked
     * @param way to the servers
     * @param contact mail address or page of the person, told to public services
     * @param pace how often and how patiently
     * @param traces how many courses of the weather are drawn
     * @param openMeteo terms under which Open-Meteo may be asked
     */
    public record Weather(
            Sources sources,
            List<Observed> observed,
            Way way,
            String contact,
            Pace pace,
            Traces traces,
            Optional<OpenMeteo> openMeteo) {

        public Weather {
            observed = List.copyOf(observed);
        }

        /** The same by another way to the servers. */
        public Weather by(Way other) {
            return new Weather(sources, observed, other, contact, pace, traces, openMeteo);
        }
    }

    /**
     * Sources of forecasts, in the order in which they are asked.
     *
     * @param usual for every property that has no order of its own
     * @param own order by name of property
     */
    public record Sources(List<Source> usual, Map<String, List<Source>> own) {

        public Sources {
            usual = List.copyOf(usual);
            own = Map.copyOf(own);
        }

        /** The order that holds for a property. */
        public List<Source> of(String property) {
            return own.getOrDefault(property, usual);
        }

        /** True where any property asks a source. */
        public boolean ask(Source source) {
            return usual.contains(source)
                    || own.values().stream().anyMatch(order -> order.contains(source));
        }
    }

    /**
     * How the servers are reached.
     *
     * @param addresses base address of a server where it is not the usual one
     * @param proxy that stands between, as host:port; empty: what this machine is set to
     * @param authority file of a certificate authority that is trusted beside the usual ones
     */
    public record Way(
            Map<Server, URI> addresses, Optional<String> proxy, Optional<Path> authority) {

        public Way {
            addresses = Map.copyOf(addresses);
        }

        /** Straight to other addresses. */
        public static Way to(Map<Server, URI> addresses) {
            return new Way(addresses, Optional.empty(), Optional.empty());
        }
    }

    /** Forecast services. */
    public enum Source {
        NWS,
        MET_NORWAY,
        OPEN_METEO
    }

    /** Analyses of what fell; both cover the USA. */
    public enum Observed {
        /** By the hour. */
        STAGE4,
        /** By the day. */
        ACIS
    }

    /** Servers whose address can be set. */
    public enum Server {
        NWS,
        MET_NORWAY,
        OPEN_METEO,
        STAGE4,
        ACIS,
        SOIL_SURVEY,
        SOIL_GRIDS
    }

    /**
     * How often and how patiently.
     *
     * @param pullEvery from one pull to the next
     * @param connect longest wait for a connection
     * @param answer longest silence within an answer
     * @param call longest time of a whole call
     * @param inFlight requests at the same time, over all services
     * @param tries for one question within one pull
     */
    public record Pace(
            Duration pullEvery,
            Duration connect,
            Duration answer,
            Duration call,
            int inFlight,
            int tries) {}

    /**
     * Courses of the weather.
     *
     * @param count at each point
     * @param seed same seed, same courses
     */
    public record Traces(int count, long seed) {}

    /**
     * Why Open-Meteo may be asked.
     *
     * @param key of a paid plan; empty: the free tier, for use that is not commercial
     * @param ensemble which ensemble to ask for
     */
    public record OpenMeteo(Optional<Secret> key, Optional<String> ensemble) {}

    /**
     * Where fields do not say, and how the ground is judged.
     *
     * @param organicMatterPct of a field that gives a texture class only [weight %]
     * @param slopeFraction of a field that does not tell
     * @param runUp how far back the soil is reckoned from the weather that was
     * @param workableShare share of traces that must be workable before work is planned, 0 to 1
     * @param askSurvey the service asks the public soil surveys for fields, a few at a time
     */
    public record Soil(
            double organicMatterPct,
            double slopeFraction,
            Duration runUp,
            double workableShare,
            boolean askSurvey) {}

    /**
     * Who works, and how.
     *
     * @param crew people, machines and hours
     * @param recipes chains of stages
     * @param ownMixes mixes that stand in for, or beside, the shared ones
     */
    public record Work(Crew crew, List<Recipe> recipes, List<Mix> ownMixes) {
        public Work {
            recipes = List.copyOf(recipes);
            ownMixes = List.copyOf(ownMixes);
        }
    }

    /**
     * How the queue is made.
     *
     * @param prices of driving, overtime and change
     * @param thinking time that the planner may take
     * @param seed same seed, same order
     */
    public record Order(PlanProblem.Prices prices, Duration thinking, long seed) {}

    /**
     * When an alert goes out.
     *
     * @param rain what is told about it
     * @param opening when a window opens, changes and closes
     * @param quiet when people are left in peace
     */
    public record StormAlerts(Rain rain, Opening opening, Quiet quiet) {

        /** The rules as the windows are judged by. */
        public WindowRules rules(ZoneId zone) {
            return new WindowRules(
                    new WindowRules.Watch(
                            opening.lead(),
                            opening.openFraction(),
                            opening.closeFraction(),
                            rain.hardMmPerH(),
                            rain.neighbourKm()),
                    new WindowRules.Change(
                            opening.shift(), opening.shiftFraction(), opening.changeFraction()),
                    new WindowRules.Manners(
                            zone, quiet.from(), quiet.to(), quiet.breakFor(), quiet.mostPerDay()));
        }
    }

    /**
     * What is told about the rain.
     *
     * @param hardMmPerH half-hour intensity that washes out bare ground [mm/h]
     * @param neighbourKm properties this close share a window [km]
     */
    public record Rain(double hardMmPerH, double neighbourKm) {}

    /**
     * When a window opens, changes and closes.
     *
     * @param lead how far ahead a window may open
     * @param openFraction chance at which it opens
     * @param closeFraction chance below which it closes
     * @param shift least change of the arrival that is worth a mail, close to it
     * @param shiftFraction the same as a share of the time still to go, where that is more
     * @param changeFraction least change of the chance that is worth a mail
     */
    public record Opening(
            Duration lead,
            double openFraction,
            double closeFraction,
            Duration shift,
            double shiftFraction,
            double changeFraction) {}

    /**
     * When people are left in peace.
     *
     * @param from local time at which quiet begins
     * @param to local time at which it ends; the same as {@code from}: never quiet
     * @param breakFor quiet is broken for a last safe start less than this after its end
     * @param mostPerDay alerts a day
     */
    public record Quiet(LocalTime from, LocalTime to, Duration breakFor, int mostPerDay) {}

    /**
     * How mail goes out, and to whom.
     *
     * @param briefAt local time of the morning brief
     * @param server way out, if there is one
     * @param recipients who gets what
     * @param hookSecrets what calls to a web address are signed with, by address
     */
    public record Post(
            LocalTime briefAt,
            Optional<MailServer> server,
            List<Recipient> recipients,
            Map<String, Secret> hookSecrets) {
        public Post {
            recipients = List.copyOf(recipients);
            hookSecrets = Map.copyOf(hookSecrets);
        }

        /** How long a mail is tried before it is given up. */
        public Duration triedFor() {
            return server.map(MailServer::triedFor).orElse(RetrySchedule.TRIED_FOR);
        }
    }

    /**
     * The mail server.
     *
     * @param host name or address
     * @param port 1 to 65535
     * @param security of the connection
     * @param login who sends, if the server asks
     * @param from address that mails come from
     * @param timeout longest wait for the server
     * @param triedFor how long a mail is tried before it is given up
     */
    public record MailServer(
            String host,
            int port,
            Security security,
            Optional<Login> login,
            String from,
            Duration timeout,
            Duration triedFor) {}

    /** How the connection to the mail server is kept from listeners. */
    public enum Security {
        /** Plain at first, then encrypted or not at all (RFC 3207). */
        STARTTLS,
        /** Encrypted from the first byte (RFC 8314). */
        TLS,
        /** Not at all; for a server on the same machine. */
        NONE
    }

    /**
     * Who sends.
     *
     * @param user name
     * @param password not shown
     */
    public record Login(String user, Secret password) {}

    /**
     * The local page.
     *
     * @param listen address it listens on
     * @param port 0: none
     * @param door who may come in, and how
     * @param tiles address of map tiles, with {z}, {x} and {y}
     */
    public record Board(String listen, int port, Door door, Optional<String> tiles) {

        /** True where it listens at every address of this machine. */
        public boolean everyAddress() {
            return listen.equals("0.0.0.0") || listen.equals("::");
        }

        /** True where nobody on the network can come to it. */
        public boolean thisMachineOnly() {
            return listen.startsWith("127.") || listen.equals("::1");
        }
    }

    /**
     * How the local page is come to.
     *
     * @param names more names that it answers to
     * @param sessionEnds after so long without a look
     * @param tls how the connection is kept from listeners
     * @param given a certificate of the user, in place of the self-made one
     */
    public record Door(
            List<String> names,
            Duration sessionEnds,
            BoardTls tls,
            Optional<GivenCertificate> given) {
        public Door {
            names = List.copyOf(names);
        }
    }

    /** Files of a certificate and of its key. */
    public record GivenCertificate(Path file, Path key) {}

    /** How the connection to the local page is kept from listeners. */
    public enum BoardTls {
        /** Not at all; for this machine alone. */
        NONE,
        /** By a certificate that the program makes for itself. */
        SELF_MADE
    }
}
