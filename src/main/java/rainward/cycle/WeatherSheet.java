package rainward.cycle;

import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import rainward.weather.source.ForecastSeries;
import rainward.weather.trace.TraceBasis;

/**
 * The weather that the fields of one property were reckoned with, times in the farm's zone: what
 * {@code ready --json} prints for each property.
 *
 * @param property its name
 * @param source of the official forecast
 * @param issuedAt by that source
 * @param members of ensembles that the rain ahead follows
 * @param notes what was made up, corrected or left out, in words
 */
public record WeatherSheet(
        String property,
        Optional<String> source,
        Optional<OffsetDateTime> issuedAt,
        List<TraceBasis.MemberUse> members,
        List<String> notes) {

    public WeatherSheet {
        members = List.copyOf(members);
        notes = List.copyOf(notes);
    }

    /** Every property, by name. */
    public static List<WeatherSheet> of(Outlook outlook, ZoneId zone) {
        return new TreeSet<>(outlook.forecasts().keySet())
                .stream().map(property -> of(outlook, property, zone)).toList();
    }

    private static WeatherSheet of(Outlook outlook, String property, ZoneId zone) {
        Optional<ForecastSeries.Stamp> stamp =
                Optional.ofNullable(outlook.forecasts().get(property));
        TraceBasis basis = Optional.ofNullable(outlook.rain().get(property))
                .map(RainPicture::basis)
                .orElse(TraceBasis.PLAIN);
        return new WeatherSheet(
                property,
                stamp.map(ForecastSeries.Stamp::source),
                stamp.map(s -> s.issuedAt().atZone(zone).toOffsetDateTime()),
                basis.members(),
                basis.words());
    }
}
