package rainward.feed.point;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import rainward.farm.GeoPoint;
import rainward.feed.reading.Notes;
import rainward.feed.reading.Quantity;
import rainward.feed.reading.Spell;
import rainward.feed.reading.Unreadable;
import rainward.feed.terms.Service;
import rainward.weather.source.EnsembleRain;
import rainward.weather.source.ForecastSeries.Stamp;
import rainward.weather.source.LastGoodCopies.Copy;

/**
 * Reads an ensemble of Open-Meteo. Members are found by the pattern of their names, the control run
 * is the plain one; a member with a missing or unbelievable hour is left out whole.
 */
public final class EnsembleColumns {

    private static final Pattern MEMBER = Pattern.compile("precipitation(_member\\d{2,3})?(_.+)?");

    private EnsembleColumns() {}

    public static EnsembleRain read(Copy copy, GeoPoint point) throws Unreadable {
        Notes notes = new Notes();
        Columns columns = Columns.of(copy.body(), notes);
        List<List<Spell>> members = new ArrayList<>();
        for (String name : columns.names()) {
            if (MEMBER.matcher(name).matches()) {
                members.add(columns.hoursBefore(name, Quantity.RAIN));
            }
        }
        int hours = members.stream().mapToInt(List::size).max().orElse(0);
        members.removeIf(m -> m.size() < hours || !unbroken(m));
        if (members.size() < 2) {
            throw new Unreadable("sent an ensemble with fewer than two whole members");
        }
        double[][] rainMm = new double[members.size()][];
        for (int m = 0; m < rainMm.length; m++) {
            rainMm[m] = members.get(m).stream().mapToDouble(Spell::value).toArray();
        }
        Instant at = copy.times().fetchedAt();
        return new EnsembleRain(
                new Stamp(Service.OPEN_METEO_ENSEMBLE.code(), at, copy.times().confirmedAt()),
                point,
                members.get(0).get(0).window().from(),
                rainMm,
                notes.all());
    }

    private static boolean unbroken(List<Spell> member) {
        for (int h = 1; h < member.size(); h++) {
            Instant due = member.get(0).window().from().plus(Duration.ofHours(h));
            if (!member.get(h).window().from().equals(due)) {
                return false;
            }
        }
        return !member.isEmpty();
    }
}
