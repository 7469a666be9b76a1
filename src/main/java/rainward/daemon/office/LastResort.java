package rainward.daemon.office;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import rainward.daemon.settings.Settings;
import rainward.farm.Property;
import rainward.farm.Window;
import rainward.feed.SourceWatch;
import rainward.feed.past.ObservedRain;
import rainward.feed.past.StationAir;
import rainward.feed.terms.Service;
import rainward.store.Books;
import rainward.weather.rain.RainOrigin;
import rainward.weather.sky.HourlyAir;
import rainward.weather.source.SourceStatus;

/**
 * Where the nearest stations are asked what the weather did when no analysis tells: every analysis
 * is out, or one of the last two whole days rests on none.
 */
final class LastResort {

    /** Their reports reach back for a day or more. */
    private static final Duration EVERY = Duration.ofHours(6);

    private static final int DAYS = 2;
    private static final Duration AIR_KEPT = Duration.ofDays(60);

    private final Office office;
    private final ObservedRain rain;
    private final SourceWatch watch;

    LastResort(Office office, ObservedRain rain, SourceWatch watch) {
        this.office = office;
        this.rain = rain;
        this.watch = watch;
    }

    /**
     * What stations near one property said.
     *
     * @param askedAt when they were asked last
     * @param air hour by hour, with gaps
     */
    record Heard(Instant askedAt, List<StationAir> air) {

        static final Heard NOTHING = new Heard(Instant.EPOCH, List.of());

        Heard {
            air = List.copyOf(air);
        }

        Heard then(Instant now, List<StationAir> fresh) {
            var byHour = new TreeMap<Instant, StationAir>();
            air.forEach(a -> byHour.put(a.hour(), a));
            fresh.forEach(a -> byHour.put(a.hour(), a));
            byHour.headMap(now.minus(AIR_KEPT)).clear();
            return new Heard(now, List.copyOf(byHour.values()));
        }

        /** A course of air with what was seen put in its hours; the sky stays as it was. */
        HourlyAir over(HourlyAir course) {
            double[] temp = course.airTempC().clone();
            double[] dew = course.dewPointC().clone();
            double[] wind = course.windMps().clone();
            for (StationAir seen : air) {
                long h = Duration.between(course.start(), seen.hour()).toHours();
                if (!seen.hour().isBefore(course.start()) && h < temp.length) {
                    temp[(int) h] = seen.airTempC();
                    dew[(int) h] = seen.dewPointC();
                    wind[(int) h] = seen.windMps();
                }
            }
            return new HourlyAir(course.start(), temp, dew, wind, course.skyCoverFraction());
        }
    }

    static Heard heard(Books books, String property) {
        return books.lastKnown().find(nameOf(property), Heard.class).orElse(Heard.NOTHING);
    }

    private static String nameOf(String property) {
        return "stations/" + property;
    }

    /** Asks for every property that no analysis tells of, after the analyses were asked. */
    void pullAll(Instant now) {
        List<Property> untold = office.roster().properties().values().stream()
                .filter(property -> analysesAreOut() || dayIsUntold(property, now))
                .toList();
        untold.forEach(property -> pull(property, now));
        String code = Service.NWS_STATIONS.code();
        if (untold.isEmpty() && watch.of(code).isPresent()) {
            // What is not needed is not in trouble: no complaint stays behind.
            watch.saw(code, SourceStatus.State.OK, code + " need not be asked", now);
        }
    }

    private void pull(Property property, Instant now) {
        Heard before = office.store().read(books -> heard(books, property.name()));
        if (before.askedAt().plus(EVERY).isAfter(now)) {
            return;
        }
        ObservedRain.Fallen fallen = rain.nearestStations(property.place(), now);
        boolean silent = fallen.rain().isEmpty() && fallen.air().isEmpty();
        watch.saw(
                Service.NWS_STATIONS.code(),
                silent ? SourceStatus.State.DOWN : SourceStatus.State.OK,
                String.join("; ", fallen.notes()),
                now);
        office.store().inTransaction(books -> {
            fallen.rain().forEach(r -> books.rain().add(property.name(), r, r.source()));
            fallen.answers().forEach(books.forecasts()::add);
            books.lastKnown().put(nameOf(property.name()), now, before.then(now, fallen.air()));
            return fallen;
        });
    }

    private boolean analysesAreOut() {
        Set<Settings.Observed> wanted = Set.copyOf(office.settings().weather().observed());
        return !wanted.isEmpty()
                && wanted.stream()
                        .allMatch(o -> watch.of(o.name().toLowerCase(Locale.ROOT))
                                .filter(s -> s.state() != SourceStatus.State.OK)
                                .isPresent());
    }

    private boolean dayIsUntold(Property property, Instant now) {
        if (office.settings().weather().observed().isEmpty()) {
            return false;
        }
        LocalDate today = LocalDate.ofInstant(now, office.zone());
        return office.store()
                .read(books -> IntStream.rangeClosed(1, DAYS)
                        .mapToObj(today::minusDays)
                        .anyMatch(day -> untold(books, property.name(), day)));
    }

    private boolean untold(Books books, String property, LocalDate day) {
        Window whole = Window.ofDay(day, office.zone());
        return books.rain().newest(property, whole).stream()
                .allMatch(r -> r.source().equals(RainOrigin.STATION_SOURCE));
    }
}
