package rainward.daemon.settings;

import java.time.Duration;
import java.time.LocalTime;
import rainward.farm.Quantity;
import rainward.queue.problem.PlanProblem;

/** How the queue is made, and when an alert goes out. */
final class OrderReader {

    private static final double ACRE_HA = 0.404_685_642_24;

    private OrderReader() {}

    static Settings.Order order(Section section) {
        PlanProblem.Prices prices = new PlanProblem.Prices(
                section.amount("an_hour_of_driving_costs", stand(0.25)),
                section.amount("an_hour_of_overtime_costs", stand(0.5)),
                section.share("moving_a_field_costs", Bounds.Real.usually(0.01, 0, 0.5)));
        Settings.Order read = new Settings.Order(
                prices,
                section.span(
                        "thinking",
                        Bounds.Span.usually(
                                Duration.ofSeconds(1),
                                Duration.ofMillis(50),
                                Duration.ofMinutes(2))),
                section.whole("seed", new Bounds.Whole(20260714, 0, Long.MAX_VALUE)));
        section.end();
        return read;
    }

    /** A price, as ground with a full stand that one would give for it. */
    private static Bounds.Amount stand(double usualAcres) {
        return Bounds.Amount.usually(Quantity.AREA, usualAcres * ACRE_HA, 0, 20 * ACRE_HA);
    }

    static Settings.StormAlerts alerts(Section section) {
        Settings.StormAlerts read =
                new Settings.StormAlerts(rain(section), opening(section), quiet(section));
        section.end();
        return read;
    }

    private static Settings.Rain rain(Section section) {
        return new Settings.Rain(
                section.amount(
                        "hard_rain_per_hour", Bounds.Amount.usually(Quantity.RAIN, 25.4, 5, 150)),
                section.amount(
                        "neighbours_within",
                        Bounds.Amount.usually(Quantity.DISTANCE, 24.140_16, 0, 200)));
    }

    private static Settings.Opening opening(Section section) {
        double open = section.share("opens_at", Bounds.Real.usually(0.5, 0.05, 0.99));
        double close = section.share("closes_below", Bounds.Real.usually(0.35, 0.01, 0.99));
        if (close > open) {
            section.wrong(
                    "closes_below",
                    "must not be above opens_at, " + open
                            + ", or windows would open and close without end");
        }
        return new Settings.Opening(
                section.span(
                        "lead",
                        Bounds.Span.usually(
                                Duration.ofHours(72), Duration.ofHours(3), Duration.ofHours(168))),
                open,
                close,
                section.span(
                        "shift_worth_a_mail",
                        Bounds.Span.usually(
                                Duration.ofHours(2), Duration.ofMinutes(30), Duration.ofHours(24))),
                section.share("shift_share_worth_a_mail", Bounds.Real.usually(0.2, 0, 1)),
                section.share("change_worth_a_mail", Bounds.Real.usually(0.2, 0.02, 1)));
    }

    static final Bounds.Span QUIET_BROKEN_FOR =
            Bounds.Span.usually(Duration.ofHours(2), Duration.ZERO, Duration.ofHours(48));

    private static Settings.Quiet quiet(Section section) {
        return new Settings.Quiet(
                section.time("quiet_from", LocalTime.of(21, 0)),
                section.time("quiet_to", LocalTime.of(5, 0)),
                section.span("quiet_broken_for", QUIET_BROKEN_FOR),
                (int) section.whole("most_per_day", new Bounds.Whole(4, 1, 24)));
    }
}
