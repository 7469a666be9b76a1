package rainward.daemon.office;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rainward.daemon.settings.Settings;
import rainward.farm.Property;
import rainward.feed.SourceWatch;
import rainward.feed.past.ObservedRain;
import rainward.feed.terms.Service;
import rainward.feed.wire.PoliteClient;
import rainward.weather.source.SourceStatus;

/**
 * Where what fell is asked for and laid down: the whole run-up by the day, once a day; the last ten
 * days by the hour, since those are adjusted so long.
 */
final class ObservedDesk {

    /** A first pull asks for many days; the rest follows with the next turns. */
    private static final int MOST_DAYS_A_TURN = 12;

    private static final Duration DAILY_EVERY = Duration.ofHours(20);

    private final Office office;
    private final ObservedRain rain;
    private final SourceWatch watch;
    private final LastResort lastResort;

    ObservedDesk(Office office, PoliteClient client, SourceWatch watch) {
        this.office = office;
        this.watch = watch;
        this.rain = new ObservedRain(client);
        this.lastResort = new LastResort(office, rain, watch);
    }

    /**
     * What has been asked for one property.
     *
     * @param daily when the days were fetched last; the distant past: never
     * @param hourly when each UTC day was fetched last
     */
    record Asked(Instant daily, Map<LocalDate, Instant> hourly) {

        static final Asked NOTHING = new Asked(Instant.EPOCH, Map.of());

        Asked {
            hourly = Map.copyOf(hourly);
        }
    }

    /** Asks for every property what is due. */
    void pullAll() {
        Instant now = office.now();
        for (Property property : office.roster().properties().values()) {
            String name = "observed/" + property.name();
            Asked asked = office.store()
                    .read(books -> books.lastKnown().find(name, Asked.class))
                    .orElse(Asked.NOTHING);
            List<ObservedRain.Fallen> fallen = new ArrayList<>();
            Asked then = hourly(property, daily(property, asked, now, fallen), now, fallen);
            office.store().inTransaction(books -> {
                fallen.stream()
                        .flatMap(f -> f.rain().stream())
                        .forEach(r -> books.rain().add(property.name(), r, r.source()));
                fallen.stream().flatMap(f -> f.answers().stream()).forEach(books.forecasts()::add);
                books.lastKnown().put(name, now, then);
                return fallen.size();
            });
        }
        lastResort.pullAll(now);
    }

    private void seen(Service service, ObservedRain.Fallen fallen, Instant now) {
        boolean silent = fallen.rain().isEmpty() && !fallen.notes().isEmpty();
        watch.saw(
                service.code(),
                silent ? SourceStatus.State.DOWN : SourceStatus.State.OK,
                String.join("; ", fallen.notes()),
                now);
    }

    private Asked daily(
            Property property, Asked asked, Instant now, List<ObservedRain.Fallen> into) {
        boolean wanted = office.settings().weather().observed().contains(Settings.Observed.ACIS);
        if (!wanted || asked.daily().plus(DAILY_EVERY).isAfter(now)) {
            return asked;
        }
        LocalDate today = LocalDate.ofInstant(now, ZoneOffset.UTC);
        LocalDate first = today.minusDays(office.settings().soil().runUp().toDays());
        ObservedRain.Fallen days =
                rain.daily(property.place(), new ObservedRain.Days(first, today), now);
        into.add(days);
        seen(Service.ACIS, days, now);
        return days.rain().isEmpty() ? asked : new Asked(now, asked.hourly());
    }

    private Asked hourly(
            Property property, Asked asked, Instant now, List<ObservedRain.Fallen> into) {
        if (!office.settings().weather().observed().contains(Settings.Observed.STAGE4)) {
            return asked;
        }
        Map<LocalDate, Instant> fetched = new TreeMap<>(asked.hourly());
        LocalDate today = LocalDate.ofInstant(now, ZoneOffset.UTC);
        int requests = 0;
        for (int ago = 0; ago <= ObservedRain.REVISED_DAYS && requests < MOST_DAYS_A_TURN; ago++) {
            LocalDate day = today.minusDays(ago);
            if (ObservedRain.due(day, Optional.ofNullable(fetched.get(day)), now)) {
                ObservedRain.Fallen hours = rain.hourly(property.place(), day, now);
                into.add(hours);
                seen(Service.STAGE4, hours, now);
                requests++;
                if (hours.rain().isEmpty() && !hours.notes().isEmpty()) {
                    // A service in trouble is not asked for the other days in the same turn.
                    break;
                }
                fetched.put(day, now);
            }
        }
        fetched.keySet()
                .removeIf(day -> day.isBefore(today.minusDays(ObservedRain.REVISED_DAYS + 2)));
        return new Asked(asked.daily(), fetched);
    }
}
