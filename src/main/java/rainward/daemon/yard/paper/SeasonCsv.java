package rainward.daemon.yard.paper;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.daemon.settings.Spelled;
import rainward.daemon.yard.season.FieldYear;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.store.journal.JournalEntry;
import rainward.store.journal.StandBook;

/** Tables for spreadsheets: commas, CRLF and quotes as RFC 4180 has them, a header, UTF-8. */
final class SeasonCsv {

    private static final CsvMapper CSV = new CsvMapper();

    private SeasonCsv() {}

    static byte[] fields(Exports.Gathered all) {
        String area = unit(all.units(), Quantity.AREA);
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "field",
                "property",
                "latitude",
                "longitude",
                area,
                "mix_wanted",
                "state",
                "mix_sown",
                "seeded_on",
                "chance_at_seeding",
                "stand",
                "counted_share",
                "cause",
                "rain_after_" + unit(all.units(), Quantity.RAIN),
                "rain_days",
                "rain_days_measured",
                "lime_owed_" + unit(all.units(), Quantity.RATE)));
        all.fields().forEach(one -> rows.add(row(all, one)));
        return bytes(rows);
    }

    private static List<String> row(Exports.Gathered all, FieldYear one) {
        Optional<FieldYear.Seeding> last = one.last();
        Optional<StandBook.StandCheck> look = last.flatMap(FieldYear.Seeding::look);
        return List.of(
                one.field().name(),
                one.field().property(),
                number(one.field().place().latitudeDeg(), 6),
                number(one.field().place().longitudeDeg(), 6),
                number(all.units().shown(Quantity.AREA, one.field().areaHa()), 3),
                one.field().wish().mixes().get(0),
                Spelled.spaced(one.status().state()),
                last.map(FieldYear.Seeding::mix).orElse(""),
                last.map(s -> s.day().toString()).orElse(""),
                number(look.map(l -> l.finding().chanceAtSeeding())),
                look.map(l -> Spelled.spaced(l.result())).orElse(""),
                number(look.map(l -> l.finding().countedFraction())),
                look.flatMap(l -> l.finding().cause()).map(Spelled::spaced).orElse(""),
                one.rainAfter()
                        .flatMap(FieldYear.RainAfter::knownMm)
                        .map(mm -> number(all.units().shown(Quantity.RAIN, mm), 2))
                        .orElse(""),
                one.rainAfter().map(rain -> String.valueOf(rain.days())).orElse(""),
                one.rainAfter().map(rain -> String.valueOf(rain.daysMeasured())).orElse(""),
                Optional.ofNullable(all.spreads().get(one.field().name()))
                        .flatMap(spread -> spread.lime())
                        .map(dose -> number(
                                all.units().shown(Quantity.RATE, dose.owed().effectiveKgPerHa()),
                                0))
                        .orElse(""));
    }

    static byte[] inputs(Exports.Gathered all) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "field",
                "property",
                "day",
                "stage",
                "machine",
                unit(all.units(), Quantity.AREA),
                "item",
                unit(all.units(), Quantity.MASS),
                unit(all.units(), Quantity.RATE),
                "said_by"));
        for (FieldYear one : all.fields()) {
            for (FieldYear.Work work : one.applied()) {
                work.what()
                        .used()
                        .forEach(used -> rows.add(List.of(
                                one.field().name(),
                                one.field().property(),
                                work.day().toString(),
                                work.what().stage(),
                                work.what().machine().orElse(""),
                                number(
                                        all.units()
                                                .shown(
                                                        Quantity.AREA,
                                                        work.what().areaHa()),
                                        3),
                                used.item(),
                                number(all.units().shown(Quantity.MASS, used.massKg()), 2),
                                number(
                                        all.units()
                                                .shown(
                                                        Quantity.RATE,
                                                        used.massKg()
                                                                / work.what().areaHa()),
                                        2),
                                work.by())));
            }
        }
        return bytes(rows);
    }

    static byte[] journal(List<JournalEntry> lines, ZoneId zone) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "line",
                "field",
                "what",
                "stage",
                "at",
                "written_at",
                "said_by",
                "machine",
                "mix",
                "takes_back",
                "note"));
        lines.forEach(line -> rows.add(List.of(
                Long.toString(line.id()),
                line.field(),
                Spelled.spaced(line.kind()),
                line.detail().stage().orElse(""),
                line.said().at().atZone(zone).toOffsetDateTime().toString(),
                line.said().recordedAt().atZone(zone).toOffsetDateTime().toString(),
                line.said().by(),
                line.detail().machine().orElse(""),
                line.detail().mix().orElse(""),
                line.detail().undoes().isPresent()
                        ? Long.toString(line.detail().undoes().getAsLong())
                        : "",
                line.detail().note().orElse(""))));
        return bytes(rows);
    }

    private static String unit(UnitSystem units, Quantity quantity) {
        return units.symbol(quantity).replace("/", "_per_");
    }

    private static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    private static String number(Optional<OptionalDouble> value) {
        return value.filter(OptionalDouble::isPresent)
                .map(v -> number(v.getAsDouble(), 3))
                .orElse("");
    }

    private static byte[] bytes(List<List<String>> rows) {
        try {
            return CSV.writer(CsvSchema.emptySchema().withLineSeparator("\r\n"))
                    .writeValueAsString(rows)
                    .getBytes(StandardCharsets.UTF_8);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a table cannot be written", e);
        }
    }
}
