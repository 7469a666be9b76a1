package rainward.cycle.sheet;

import static rainward.cycle.sheet.Shown.local;
import static rainward.cycle.sheet.Shown.rounded;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import rainward.cycle.Outlook;
import rainward.cycle.RainPicture;
import rainward.weather.past.PastWeather;
import rainward.weather.past.RainShare;
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
 * @param past rain of the last sixty days with where it comes from, the newest day first
 */
public record WeatherSheet(
        String property,
        Optional<String> source,
        Optional<OffsetDateTime> issuedAt,
        List<TraceBasis.MemberUse> members,
        List<String> notes,
        List<Day> past) {

    private static final int DAYS = 60;

    public WeatherSheet {
        members = List.copyOf(members);
        notes = List.copyOf(notes);
        past = List.copyOf(past);
    }

    /**
     * Rain of a day.
     *
     * @param day of the farm
     * @param rainMm what fell [mm]
     * @param origin what most of its hours rest on, in words
     * @param from all that it rests on
     */
    public record Day(LocalDate day, double rainMm, String origin, List<From> from) {

        static Day of(PastWeather.RainDay day, ZoneId zone) {
            return new Day(
                    day.day(),
                    hundredths(day.rainMm()),
                    day.origin().words(),
                    day.shares().stream().map(share -> From.of(share, zone)).toList());
        }
    }

    /**
     * One teller.
     *
     * @param origin in words
     * @param by the person who read the gauge, the service, or the region of the climate
     * @param toldAt when, where somebody told
     * @param hours of the day that rest on it
     * @param rainMm in those hours [mm]
     */
    public record From(
            String origin, String by, Optional<OffsetDateTime> toldAt, int hours, double rainMm) {

        static From of(RainShare share, ZoneId zone) {
            return new From(
                    share.from().origin().words(),
                    share.from().by(),
                    share.toldAt().map(at -> local(at, zone)),
                    share.hours(),
                    hundredths(share.rainMm()));
        }
    }

    /** Every property, by name. */
    public static List<WeatherSheet> of(Outlook outlook, ZoneId zone) {
        return new TreeSet<>(outlook.fallen().keySet())
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
                stamp.map(s -> local(s.issuedAt(), zone)),
                basis.members(),
                basis.words(),
                outlook.fallen().getOrDefault(property, List.of()).stream()
                        .sorted(Comparator.comparing(PastWeather.RainDay::day).reversed())
                        .limit(DAYS)
                        .map(day -> Day.of(day, zone))
                        .toList());
    }

    private static double hundredths(double mm) {
        return rounded(mm, 100);
    }
}
