package rainward.cycle.sheet;

import static rainward.cycle.sheet.Shown.local;
import static rainward.cycle.sheet.Shown.rounded;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rainward.cycle.Outlook;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.queue.problem.PlanItem;
import rainward.readiness.Readiness;
import rainward.weather.source.ForecastSeries;

/**
 * The order as a table, times in the farm's zone: what {@code order --json} prints.
 *
 * @param asOf the moment it holds for
 * @param forecastIssuedAt issue of the oldest forecast it rests on; empty without any
 * @param forecastAgeHours its age at {@code asOf} [h]
 * @param items one line a stage, in order of start
 */
public record OrderSheet(
        OffsetDateTime asOf,
        Optional<OffsetDateTime> forecastIssuedAt,
        Optional<Double> forecastAgeHours,
        List<Line> items) {

    public OrderSheet {
        items = List.copyOf(items);
    }

    /**
     * One stage of one field.
     *
     * @param mix that goes into the ground; empty where the stage sows nothing
     * @param chanceOfStand where it is seeded as planned, of the field's seeding; 0 to 1
     * @param readiness of the field now, 0 to 100
     */
    public record Line(
            int rank,
            String field,
            String property,
            double acres,
            String stage,
            Optional<String> mix,
            String machine,
            String person,
            OffsetDateTime start,
            OffsetDateTime end,
            double chanceOfStand,
            int readiness,
            String reason) {}

    /** Writes an outlook's order as a table. */
    public static OrderSheet of(Outlook outlook, ZoneId zone) {
        Optional<Instant> issued = outlook.forecasts().values().stream()
                .map(ForecastSeries.Stamp::issuedAt)
                .min(Comparator.naturalOrder());
        return new OrderSheet(
                local(outlook.asOf(), zone),
                issued.map(at -> local(at, zone)),
                issued.map(at -> hours(at, outlook.asOf())),
                outlook.plan().items().stream()
                        .flatMap(item -> outlook.field(item.place().field()).stream()
                                .map(field -> line(item, outlook, field, zone)))
                        .toList());
    }

    private static Line line(
            PlanItem item, Outlook outlook, Outlook.FieldOutlook field, ZoneId zone) {
        Readiness readiness = field.readiness();
        double areaHa = field.item().field().areaHa();
        return new Line(
                item.rank(),
                item.place().field(),
                item.place().property(),
                rounded(UnitSystem.US_CUSTOMARY.shown(Quantity.AREA, areaHa), 100),
                item.place().stage(),
                item.sowing().map(PlanItem.Sowing::mix),
                item.hands().machine(),
                item.hands().person(),
                local(item.work().from(), zone),
                local(item.work().to(), zone),
                rounded(chance(item, outlook), 1000),
                readiness.score(),
                readiness.because());
    }

    private static double chance(PlanItem item, Outlook outlook) {
        return outlook.plan()
                .seedingOf(item.place().field())
                .flatMap(PlanItem::sowing)
                .map(PlanItem.Sowing::chance)
                .orElse(0.0);
    }

    private static double hours(Instant from, Instant to) {
        return rounded(Duration.between(from, to).toMinutes() / 60.0, 10);
    }
}
