package rainward.intake;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.input.PlantBack;
import rainward.input.SoilTest;
import rainward.input.record.Harvested;
import rainward.input.record.TagRead;
import rainward.input.seed.SeedTag;
import rainward.input.stock.StockEntry;

/**
 * Soil tests, seed tags, harvests, stock and sprays out of a person's table.
 *
 * @param names what may be named
 * @param zone of the farm's days
 */
public record RecordTable(Names names, ZoneId zone) {

    /** Kinds of tables. */
    public enum Kind {
        SOIL_TESTS,
        TAGS,
        HARVESTS,
        STOCK,
        SPRAYS
    }

    /**
     * What may be named.
     *
     * @param fields of the farm
     * @param species of the mixes
     * @param items of the shed
     * @param crops that removal is known of
     */
    public record Names(
            List<String> fields, List<String> species, List<String> items, List<String> crops) {
        public Names {
            fields = List.copyOf(fields);
            species = List.copyOf(species);
            items = List.copyOf(items);
            crops = List.copyOf(crops);
        }
    }

    /** All of a file, or every fault in it. */
    public Intake<List<Entered>> read(Path file, Kind kind) {
        return SpreadSheet.open(file, sheet -> {
            if (sheet.rows().isEmpty()) {
                sheet.faults().add("", "has no lines under its header", "add one line a record");
            }
            List<Entered> all = new ArrayList<>();
            sheet.rows().forEach(row -> entry(row, kind).ifPresent(all::add));
            return sheet.faults().outcome(() -> List.copyOf(all));
        });
    }

    private Optional<Entered> entry(Particulars row, Kind kind) {
        int before = row.faults().count();
        Optional<LocalDate> on = day(row, kind == Kind.SOIL_TESTS ? "sampled_on" : "on");
        Optional<String> field = kind == Kind.TAGS || kind == Kind.STOCK
                ? Optional.empty()
                : row.name("field").flatMap(name -> row.oneOf("field", name, names.fields()));
        LocalDate day = on.orElse(LocalDate.EPOCH);
        try {
            Object entry = switch (kind) {
                case SOIL_TESTS -> soilTest(row, field.orElse("?"), day);
                case TAGS -> tag(row, day);
                case HARVESTS -> harvest(row, day);
                case STOCK -> stock(row, day);
                case SPRAYS -> spray(row, day);
            };
            return row.faults().count() > before
                    ? Optional.empty()
                    : Optional.of(new Entered(row.place(), field, day, entry));
        } catch (IllegalArgumentException e) {
            if (row.faults().count() == before) {
                row.faults().add(row.place(), String.valueOf(e.getMessage()), "mend this line");
            }
            return Optional.empty();
        }
    }

    private static Optional<LocalDate> day(Particulars row, String column) {
        try {
            return Optional.of(LocalDate.parse(row.text(column).orElse("")));
        } catch (DateTimeException e) {
            row.wrong(column, "must be a day, for instance 2026-04-02");
            return Optional.empty();
        }
    }

    private static SoilTest soilTest(Particulars row, String field, LocalDate day) {
        double ph = row.required("ph", 3, 10).orElse(7);
        Optional<SoilTest.Buffer> buffer = row.number("buffer_ph", 4, 8).stream()
                .mapToObj(value ->
                        row.name("buffer_method").map(method -> new SoilTest.Buffer(method, value)))
                .flatMap(Optional::stream)
                .findFirst();
        return new SoilTest(
                field,
                day,
                new SoilTest.Acidity(ph, buffer),
                new SoilTest.Nutrients(
                        extract(row, "p"), extract(row, "k"), row.number("cec", 0, 100)));
    }

    /** A number of a laboratory means nothing without its method. */
    private static Optional<SoilTest.Extract> extract(Particulars row, String nutrient) {
        OptionalDouble found = row.number(nutrient + "_ppm", 0, 5_000);
        return found.isEmpty()
                ? Optional.empty()
                : row.name(nutrient + "_method")
                        .map(method -> new SoilTest.Extract(method, found.getAsDouble()));
    }

    private TagRead tag(Particulars row, LocalDate day) {
        String species = row.name("species")
                .flatMap(name -> row.oneOf("species", name, names.species()))
                .orElse("?");
        boolean leftOut = row.text("coating_in_purity")
                .map(text -> text.equalsIgnoreCase("yes"))
                .orElse(true);
        double purity = row.required("purity_percent", 1, 100).orElse(100);
        double germination = row.required("germination_percent", 0, 100).orElse(100);
        double dormant = row.number("dormant_percent", 0, 100).orElse(0);
        double coat = row.number("coating_percent", 0, 95).orElse(0);
        return new TagRead(
                species,
                new SeedTag(
                        row.name("lot").orElse("?"),
                        purity / 100,
                        new SeedTag.Germination(germination / 100, dormant / 100),
                        new SeedTag.Coating(coat / 100, leftOut)),
                day);
    }

    private Harvested harvest(Particulars row, LocalDate day) {
        String crop = row.name("crop")
                .flatMap(name -> row.oneOf("crop", name, names.crops()))
                .orElse("?");
        return new Harvested(
                crop,
                day,
                either(row, "yield_lb_per_ac", "yield_kg_per_ha", Quantity.RATE, 200_000));
    }

    private StockEntry stock(Particulars row, LocalDate day) {
        String item = row.name("item")
                .flatMap(name -> row.oneOf("item", name, names.items()))
                .orElse("?");
        String word = row.text("what").orElse("counted").toLowerCase(Locale.ROOT);
        if (!word.equals("counted") && !word.equals("received")) {
            row.wrong("what", "must be counted or received");
        }
        return new StockEntry(
                item,
                day.atTime(6, 0).atZone(zone).toInstant(),
                word.equals("received") ? StockEntry.Kind.RECEIVED : StockEntry.Kind.COUNTED,
                either(row, "lb", "kg", Quantity.MASS, 1_000_000));
    }

    private PlantBack spray(Particulars row, LocalDate day) {
        OptionalDouble days = row.number("label_days", 0, 1_500);
        return new PlantBack(
                row.name("product").orElse("?"),
                row.name("crop").orElse("?"),
                day,
                days.isPresent()
                        ? OptionalInt.of((int) Math.ceil(days.getAsDouble()))
                        : OptionalInt.empty());
    }

    /** An amount in one of two columns, each with its unit in the name. */
    private static double either(
            Particulars row, String us, String metric, Quantity quantity, double most) {
        if (row.has(us) == row.has(metric)) {
            row.wrong(us, "must be given, or " + metric + ", and not both");
            return 0;
        }
        return row.has(us)
                ? UnitSystem.US_CUSTOMARY.inside(
                        quantity, row.number(us, 0, most).orElse(0))
                : row.number(metric, 0, most).orElse(0);
    }
}
