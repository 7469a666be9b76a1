package rainward.soil.verify;

import java.time.LocalDate;
import java.util.List;
import rainward.farm.GeoPoint;
import rainward.farm.Require;

/**
 * Consecutive days at one station.
 *
 * @param station its name
 * @param place on the ground
 * @param days in order, none left out, at least two
 */
public record StationYear(String station, GeoPoint place, List<StationDay> days) {

    public StationYear {
        Require.named("station", station);
        days = List.copyOf(days);
        Require.that(days.size() > 1, station + ": fewer than two days");
        for (int d = 1; d < days.size(); d++) {
            LocalDate due = days.get(d - 1).weather().day().plusDays(1);
            LocalDate day = days.get(d).weather().day();
            Require.that(
                    day.equals(due), station + ": " + day + " stands where " + due + " is due");
        }
    }
}
