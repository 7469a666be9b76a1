package rainward.daemon.yard.paper;

import java.time.ZonedDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import rainward.daemon.office.Office;
import rainward.daemon.yard.season.FieldYear;
import rainward.daemon.yard.season.YearDesk;
import rainward.daemon.yard.spread.SpreadDesk;
import rainward.farm.UnitSystem;
import rainward.input.spread.FieldSpread;
import rainward.store.Books;

/** Gathers what files to hand on are made of. */
public final class Exports {

    private final Office office;

    public Exports(Office office) {
        this.office = office;
    }

    /**
     * All that a file tells.
     *
     * @param farm whose
     * @param made when
     * @param units of every amount
     * @param fields in the order of the import
     * @param spreads lime and fertilizer, by field
     * @param boundaries as imported, by field
     */
    record Gathered(
            String farm,
            ZonedDateTime made,
            UnitSystem units,
            List<FieldYear> fields,
            Map<String, FieldSpread> spreads,
            Map<String, String> boundaries) {}

    private Gathered gather(Books books, int year) {
        ZonedDateTime now = office.now().atZone(office.zone());
        List<FieldYear> years = new YearDesk(office).all(books, year);
        return new Gathered(
                office.settings().farm().name(),
                now,
                office.settings().farm().units(),
                years,
                new SpreadDesk(office)
                        .all(books, now.toLocalDate()).stream()
                                .collect(Collectors.toMap(
                                        one -> one.asked().plot().field(), Function.identity())),
                years.stream()
                        .map(one -> one.field().name())
                        .flatMap(name -> books.fields().boundaryOf(name).stream()
                                .map(boundary -> Map.entry(name, boundary)))
                        .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue)));
    }

    private int year() {
        return office.now().atZone(office.zone()).getYear();
    }

    /** Every field with its state, as a table. */
    public byte[] fieldsCsv() {
        return office.store().read(books -> SeasonCsv.fields(gather(books, year())));
    }

    /** Everything that was put on or in, as a table. */
    public byte[] inputsCsv() {
        return office.store().read(books -> SeasonCsv.inputs(gather(books, year())));
    }

    /** Every line of the journal, those taken back too, as a table. */
    public byte[] journalCsv() {
        return office.store()
                .read(books -> SeasonCsv.journal(books.journal().everything(), office.zone()));
    }

    /** Every field with its state, as a map layer. */
    public byte[] geoJson() {
        return office.store().read(books -> FieldsGeoJson.of(gather(books, year())));
    }

    /** The report of the season for the landowner of a property. */
    public byte[] report(String property, Optional<Integer> year) {
        return office.store()
                .read(books ->
                        new SeasonReport(gather(books, year.orElse(year())), property).bytes());
    }
}
