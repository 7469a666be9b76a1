package rainward.daemon.office;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import rainward.brief.Brief;
import rainward.farm.FieldCase;
import rainward.farm.FieldState;
import rainward.weather.past.PastWeather;

/**
 * When a seeded field is to be looked at: some days after rain has done its part, and not before;
 * without rain, once the seed has lain so long that somebody should dig. Common practice, no
 * source.
 */
final class StandChecks {

    private static final double STARTING_RAIN_MM = 6;
    private static final int DAYS_AFTER_RAIN = 5;
    private static final int DAYS_WITHOUT_RAIN = 14;

    private final ZoneId zone;

    StandChecks(ZoneId zone) {
        this.zone = zone;
    }

    /** The check of a field that is seeded and not yet looked at. */
    Optional<Brief.StandCheck> of(FieldCase item, PastWeather past) {
        if (item.status().state() != FieldState.SEEDED) {
            return Optional.empty();
        }
        return item.status().seededAt().map(at -> {
            LocalDate seeded = LocalDate.ofInstant(at, zone);
            return new Brief.StandCheck(
                    item.field().name(), item.mix(), seeded, lookOn(seeded, past.days()));
        });
    }

    private static LocalDate lookOn(LocalDate seeded, List<PastWeather.RainDay> days) {
        double sinceMm = 0;
        for (PastWeather.RainDay day : days) {
            if (!day.day().isBefore(seeded)) {
                sinceMm += day.rainMm();
                if (sinceMm >= STARTING_RAIN_MM) {
                    return day.day().plusDays(DAYS_AFTER_RAIN);
                }
            }
        }
        return seeded.plusDays(DAYS_WITHOUT_RAIN);
    }
}
