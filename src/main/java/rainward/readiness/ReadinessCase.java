package rainward.readiness;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import rainward.farm.CrewHours;
import rainward.farm.FieldCase;
import rainward.farm.Mix;
import rainward.farm.UnitSystem;
import rainward.soil.SoilRun;
import rainward.stand.StandCase;
import rainward.stand.StandOutlook;
import rainward.weather.source.ForecastSeries;
import rainward.weather.trace.Traces;

/**
 * All that is known of one field when it is asked how ready it is.
 *
 * @param item the field as it lies and stands
 * @param work what is still to be done before seed goes in
 * @param ahead weather, soil and stands; empty where there is no forecast
 * @param outOfStock mixes that the shed cannot fill
 * @param teller for whom, when and where
 */
public record ReadinessCase(
        FieldCase item, Work work, Optional<Ahead> ahead, Set<String> outOfStock, Teller teller) {

    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("EEE d MMM", Locale.US);

    public ReadinessCase {
        outOfStock = Set.copyOf(outOfStock);
    }

    /**
     * Stages before seeding.
     *
     * @param openStages names of those not done, in order
     * @param doneBy when they could be done at the earliest; now where none is open
     * @param hours in which the crew seeds
     */
    public record Work(List<String> openStages, Instant doneBy, CrewHours hours) {

        public Work {
            openStages = List.copyOf(openStages);
        }
    }

    /**
     * What is ahead.
     *
     * @param stamp of the forecast
     * @param traces of the weather
     * @param soil on the traces, at the depth of the mix wanted first
     * @param options mixes with their outlook, the wanted one first; all over the same hours
     */
    public record Ahead(
            ForecastSeries.Stamp stamp, Traces traces, SoilRun soil, List<Option> options) {

        public Ahead {
            options = List.copyOf(options);
        }
    }

    /**
     * A mix that could be sown.
     *
     * @param question what was asked of the stand model
     * @param outlook what comes of it by seeding hour
     */
    public record Option(StandCase question, StandOutlook outlook) {

        public Mix mix() {
            return question.mix();
        }
    }

    /**
     * How the answer is told.
     *
     * @param asOf the moment it holds for
     * @param zone of the farm's days
     * @param units of the person
     */
    public record Teller(Instant asOf, ZoneId zone, UnitSystem units) {

        /** A time to come as people say it: {@code tonight}, {@code Thursday dawn}. */
        String when(Instant instant) {
            ZonedDateTime then = instant.atZone(zone);
            LocalDate today = LocalDate.ofInstant(asOf, zone);
            boolean small = then.getHour() < 4;
            if (then.toLocalDate().equals(today)) {
                return switch (part(then.getHour())) {
                    case "night" -> small ? "before dawn" : "tonight";
                    case "dawn" -> "at dawn";
                    default -> "this " + part(then.getHour());
                };
            }
            // The small hours belong to the night before: nobody calls them the next day.
            LocalDate night = small ? then.toLocalDate().minusDays(1) : then.toLocalDate();
            if (night.equals(today)) {
                return "tonight";
            }
            String day = night.equals(today.plusDays(1))
                    ? "tomorrow"
                    : Duration.between(asOf, instant).toDays() < 6
                            ? night.getDayOfWeek().getDisplayName(TextStyle.FULL, Locale.ENGLISH)
                            : DAY.format(night);
            return day + " " + part(then.getHour());
        }

        private static String part(int hour) {
            if (hour < 4 || hour >= 21) {
                return "night";
            }
            if (hour < 8) {
                return "dawn";
            }
            if (hour < 12) {
                return "morning";
            }
            return hour < 17 ? "afternoon" : "evening";
        }
    }
}
