package rainward.daemon.yard.season;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import rainward.daemon.office.Office;
import rainward.daemon.office.PastDesk;
import rainward.farm.Field;
import rainward.farm.Property;
import rainward.farm.Window;
import rainward.store.Books;
import rainward.weather.past.PastWeather;
import rainward.weather.past.RainShare;

/**
 * What fell on a seeding. It is read from the book of rain for the days in question, however long
 * ago: the run-up of the soil holds only the last weeks. Days that nobody measured are told apart
 * and not filled in, for this is printed on paper.
 */
final class RainAfterDesk {

    private static final int DAYS = 30;

    private final Office office;
    private final Books books;
    private final PastDesk past;

    RainAfterDesk(Office office, Books books) {
        this.office = office;
        this.books = books;
        this.past = new PastDesk(office);
    }

    /** Rain after the last of a field's seedings. */
    Optional<FieldYear.RainAfter> after(Field field, List<FieldYear.Seeding> seedings) {
        Optional<Property> property =
                Optional.ofNullable(office.roster().properties().get(field.property()));
        return seedings.isEmpty()
                ? Optional.empty()
                : property.flatMap(
                        at -> after(at, seedings.get(seedings.size() - 1).day()));
    }

    private Optional<FieldYear.RainAfter> after(Property property, LocalDate day) {
        ZoneId zone = office.zone();
        Instant now = office.now();
        Instant from = day.atStartOfDay(zone).toInstant();
        Instant end = day.plusDays(DAYS).atStartOfDay(zone).toInstant();
        Instant to = end.isBefore(now) ? end : now;
        if (!from.isBefore(to)) {
            return Optional.empty();
        }
        List<PastWeather.RainDay> days =
                past.of(books, property, new Window(from, to)).days();
        long measured = days.stream().filter(one -> one.origin().observed()).count();
        double sumMm = days.stream()
                .flatMap(one -> one.shares().stream())
                .filter(share -> share.from().origin().observed())
                .mapToDouble(RainShare::rainMm)
                .sum();
        return Optional.of(new FieldYear.RainAfter(sumMm, days.size(), (int) measured));
    }
}
