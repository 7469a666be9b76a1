package rainward.cycle;

import java.time.Duration;
import java.time.Instant;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rainward.farm.Operation;
import rainward.farm.Window;
import rainward.queue.pace.StoppedHours;
import rainward.weather.alert.PublicAlert;
import rainward.weather.alert.PublicAlert.Danger;
import rainward.weather.alert.PublicAlert.Severity;

/**
 * Hours in which a public alert keeps people off a property. Only what the service calls likely or
 * observed (CAP 1.2, certainty) stops work: a watch of eight hours over half a state is a caution
 * of the brief, not a lost day. Which danger stops what is common practice, no source.
 *
 * @param alerts that stand at the property
 * @param horizon that is planned
 */
public record AlertStops(List<PublicAlert> alerts, Window horizon) {

    /** An alert that gives no end is taken to hold for a day, unless it is sent again. */
    private static final Duration WITHOUT_END = Duration.ofHours(24);

    private static final Set<String> SURE = Set.of("likely", "observed");

    /** Spray and spread drift; the rest of the work bears wind. */
    private static final Set<Operation> DRIFTING = Set.of(Operation.SPRAY, Operation.SPREAD);

    /** The same hours, and those that the alerts take. */
    StoppedHours beside(StoppedHours weather) {
        if (alerts.isEmpty()) {
            return weather;
        }
        Map<Operation, BitSet> stopped = new EnumMap<>(Operation.class);
        weather.stopped().forEach((operation, hours) -> {
            BitSet all = (BitSet) hours.clone();
            alerts.stream()
                    .filter(alert -> stops(alert, operation))
                    .forEach(alert -> all.or(hours(alert)));
            stopped.put(operation, all);
        });
        return new StoppedHours(stopped, weather.firmedByRain(), weather.unworkable());
    }

    /** The alert that keeps people from an operation in the hour of an instant, if one does. */
    public Optional<PublicAlert> of(Operation operation, Instant instant) {
        long hour = Duration.between(horizon.from(), instant).toHours();
        return alerts.stream()
                .filter(alert -> stops(alert, operation))
                .filter(alert -> hour >= 0 && hours(alert).get((int) hour))
                .findFirst();
    }

    /** Heat and frost stop nobody by themselves: they are cautions of the brief. */
    private static boolean stops(PublicAlert alert, Operation operation) {
        PublicAlert.Rank rank = alert.rank();
        boolean sure = SURE.contains(rank.certainty().toLowerCase(java.util.Locale.ROOT));
        boolean grave = rank.severity().compareTo(Severity.SEVERE) >= 0;
        Danger danger = alert.danger();
        return sure
                && switch (danger) {
                    case THUNDERSTORM, TORNADO -> grave;
                    case FLOOD -> grave;
                    case WIND -> grave || DRIFTING.contains(operation);
                    case HEAT, FROST, OTHER -> false;
                };
    }

    private BitSet hours(PublicAlert alert) {
        PublicAlert.Times times = alert.times();
        Instant end = times.endsAt().orElse(times.startsAt().plus(WITHOUT_END));
        BitSet hours = new BitSet();
        for (int h = 0; h < horizon.length().toHours(); h++) {
            Instant from = horizon.from().plus(Duration.ofHours(h));
            Instant to = from.plus(Duration.ofHours(1));
            hours.set(h, times.startsAt().isBefore(to) && end.isAfter(from));
        }
        return hours;
    }
}
