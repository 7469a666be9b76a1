package rainward.weather.rain;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import rainward.farm.Window;

/** Rain of intervals shared out to hours or farm days in proportion to time, sums kept. */
public final class RainShares {

    private RainShares() {}

    /**
     * Share of each hour: {@code q x overlap / length}, summed over the intervals.
     *
     * @param amounts totals of intervals
     * @param start of the first hour
     * @param hours how many
     * @return rain in each hour; zero also where nothing is known [mm]
     */
    public static double[] hourlyMm(List<RainAmount> amounts, Instant start, int hours) {
        double[] shares = new double[hours];
        for (RainAmount amount : amounts) {
            int first = hourOf(start, amount.window().from());
            for (int h = Math.max(0, first); h < hours; h++) {
                Instant from = start.plus(Duration.ofHours(h));
                if (!from.isBefore(amount.window().to())) {
                    break;
                }
                shares[h] += shareMm(amount, new Window(from, from.plus(Duration.ofHours(1))));
            }
        }
        return shares;
    }

    /**
     * Rain of a calendar day, 23, 24 or 25 hours long.
     *
     * @param amounts totals of intervals
     * @param day of the farm
     * @param zone of the farm
     * @return share of the day, and whether the intervals cover all of it
     */
    public static DayTotal dayTotal(List<RainAmount> amounts, LocalDate day, ZoneId zone) {
        Window whole = Window.ofDay(day, zone);
        double total = 0;
        double covered = 0;
        for (RainAmount amount : amounts) {
            total += shareMm(amount, whole);
            covered += amount.window().sharedHours(whole);
        }
        double dayHours = whole.length().toMillis() / 3_600_000.0;
        return new DayTotal(total, covered >= dayHours - 1e-6);
    }

    /** Part of an interval's total that falls into a stretch of time [mm]. */
    public static double shareMm(RainAmount amount, Window window) {
        double lengthHours = amount.window().length().toMillis() / 3_600_000.0;
        return lengthHours == 0
                ? 0
                : amount.amountMm() * amount.window().sharedHours(window) / lengthHours;
    }

    private static int hourOf(Instant start, Instant at) {
        return (int) Math.floorDiv(Duration.between(start, at).toSeconds(), 3600L);
    }

    /**
     * Rain of a day.
     *
     * @param amountMm known part [mm]
     * @param complete false where part of the day is not covered: then it is "at least" the amount
     */
    public record DayTotal(double amountMm, boolean complete) {}
}
