package rainward.daemon.settings;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rainward.daemon.settings.Settings.Observed;
import rainward.daemon.settings.Settings.Source;

/**
 * Whom to ask for weather, and how.
 *
 * @param secrets where a key may be
 */
record WeatherReader(SecretReader secrets) {

    Settings.Weather weather(Section weather) {
        Settings.Weather read = new Settings.Weather(
                sources(weather),
                weather.maybeChoices("observed", Observed.class, List.of(Observed.values())),
                new WayReader(secrets.settings()).way(weather),
                contact(weather),
                pace(weather),
                traces(weather),
                openMeteo(weather));
        if (read.sources().ask(Source.OPEN_METEO) && read.openMeteo().isEmpty()) {
            weather.wrong(
                    "sources",
                    "\"open-meteo\" needs [weather.open_meteo] with a key or with"
                            + " not_commercial = true");
        }
        weather.end();
        return read;
    }

    private static Settings.Sources sources(Section weather) {
        List<Source> usual =
                weather.choices("sources", Source.class, List.of(Source.NWS, Source.MET_NORWAY));
        Map<String, List<Source>> own = new TreeMap<>();
        for (Section property : weather.tables("property")) {
            String name = property.name("name");
            List<Source> order = property.choices("sources", Source.class, List.of());
            if (own.put(name, order) != null) {
                property.wrong("name", "must be another property: this one has its order already");
            }
            property.end();
        }
        return new Settings.Sources(usual, own);
    }

    /** It goes into a header, so it must be plain. */
    private static String contact(Section weather) {
        String remedy = "must be a mail address or web page at which the services can reach you, in"
                + " plain ASCII";
        String contact = weather.text("contact", remedy);
        boolean plain = contact.chars().allMatch(c -> c > 31 && c < 127);
        boolean reachable = contact.contains("@") || contact.startsWith("http");
        if (!contact.equals(Section.NAMELESS) && !(plain && reachable)) {
            weather.wrong("contact", remedy);
        }
        return contact;
    }

    private static Settings.Pace pace(Section weather) {
        return new Settings.Pace(
                weather.span(
                        "pull_every",
                        Bounds.Span.usually(
                                Duration.ofHours(1), Duration.ofMinutes(15), Duration.ofHours(12))),
                weather.span("connect_within", seconds(10)),
                weather.span("answer_within", seconds(30)),
                weather.span("call_within", seconds(60)),
                (int) weather.whole("in_flight", new Bounds.Whole(2, 1, 20)),
                (int) weather.whole("tries", new Bounds.Whole(3, 1, 5)));
    }

    private static Bounds.Span seconds(int usual) {
        return Bounds.Span.usually(
                Duration.ofSeconds(usual), Duration.ofSeconds(1), Duration.ofMinutes(5));
    }

    private static Settings.Traces traces(Section weather) {
        return new Settings.Traces(
                (int) weather.whole("traces", new Bounds.Whole(200, 20, 2000)),
                weather.whole("seed", new Bounds.Whole(20260714, 0, Long.MAX_VALUE)));
    }

    private Optional<Settings.OpenMeteo> openMeteo(Section weather) {
        boolean there = weather.has("open_meteo");
        Section terms = weather.table("open_meteo");
        boolean notCommercial = terms.flag("not_commercial", false);
        Optional<Secret> key = secrets.secret(terms, "key");
        Optional<String> ensemble =
                terms.maybeText("ensemble", "must be the name of an ensemble model");
        terms.end();
        if (there && key.isEmpty() && !notCommercial) {
            terms.reading()
                    .fault(
                            "weather.open_meteo",
                            "gives neither a key nor not_commercial = true",
                            "its free tier is for use that is not commercial; say so, or name a"
                                    + " key_file");
        }
        return there ? Optional.of(new Settings.OpenMeteo(key, ensemble)) : Optional.empty();
    }
}
