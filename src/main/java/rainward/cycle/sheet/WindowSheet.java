package rainward.cycle.sheet;

import static rainward.cycle.sheet.Shown.local;

import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import rainward.window.StormWindow;

/**
 * A storm window as a line of a table, times in the farm's zone: what {@code windows --json} prints
 * for each.
 *
 * @param id the same from one round to the next
 * @param properties where the rain comes
 * @param chance of useful rain, 0 to 1
 * @param arrival one time in ten before, as likely before as after, one time in ten after
 * @param amountMm one time in ten less, as likely less as more, one time in ten more [mm]
 * @param hardRainChance that washes seed out, 0 to 1
 * @param fits fields that can be seeded before it
 * @param leave fields to leave
 */
public record WindowSheet(
        String id,
        List<String> properties,
        double chance,
        List<OffsetDateTime> arrival,
        List<Double> amountMm,
        double hardRainChance,
        List<Fit> fits,
        List<String> leave) {

    public WindowSheet {
        properties = List.copyOf(properties);
        arrival = List.copyOf(arrival);
        amountMm = List.copyOf(amountMm);
        fits = List.copyOf(fits);
        leave = List.copyOf(leave);
    }

    /**
     * A field that fits.
     *
     * @param field its name
     * @param plannedStart of seeding in the order
     * @param lastSafeStart of seeding ahead of the rain
     * @param chanceOfStand seeded as planned, 0 to 1
     */
    public record Fit(
            String field,
            OffsetDateTime plannedStart,
            OffsetDateTime lastSafeStart,
            double chanceOfStand) {}

    public static List<WindowSheet> of(List<StormWindow> windows, ZoneId zone) {
        return windows.stream().map(window -> of(window, zone)).toList();
    }

    public static WindowSheet of(StormWindow window, ZoneId zone) {
        StormWindow.Arrival arrival = window.arrival();
        StormWindow.Amount amount = window.amount();
        return new WindowSheet(
                window.id(),
                List.copyOf(window.properties()),
                window.chance(),
                List.of(
                        local(arrival.p10(), zone),
                        local(arrival.p50(), zone),
                        local(arrival.p90(), zone)),
                List.of(amount.p10Mm(), amount.p50Mm(), amount.p90Mm()),
                window.hardRainChance(),
                window.fits().stream().map(fit -> fit(fit, zone)).toList(),
                window.leave());
    }

    private static Fit fit(StormWindow.Fit fit, ZoneId zone) {
        return new Fit(
                fit.field(),
                local(fit.plannedStart(), zone),
                local(fit.lastSafeStart(), zone),
                fit.chance());
    }
}
