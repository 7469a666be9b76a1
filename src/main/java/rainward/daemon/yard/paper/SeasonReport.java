package rainward.daemon.yard.paper;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rainward.daemon.settings.Spelled;
import rainward.daemon.yard.season.FieldYear;
import rainward.farm.FieldState;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.input.Gap;
import rainward.input.spread.FieldSpread;
import rainward.input.spread.LimeDose;
import rainward.store.journal.StandBook;

/**
 * The season on one property, as its landowner gets it: what went in, what came up, what is owed.
 */
final class SeasonReport {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.US);
    private static final DateTimeFormatter LONG_DAY =
            DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.US);
    private static final float MAP_PT = 210;

    private final Exports.Gathered all;
    private final String property;
    private final List<FieldYear> fields;
    private final UnitSystem units;

    SeasonReport(Exports.Gathered all, String property) {
        this.all = all;
        this.property = property;
        this.units = all.units();
        this.fields = all.fields().stream()
                .filter(one -> one.field().property().equals(property))
                .toList();
    }

    byte[] bytes() {
        String title = property + ", season " + all.made().getYear();
        Paper paper = new Paper(all.farm() + ": " + title, all.made());
        paper.title(title)
                .small("Work of " + all.farm() + " as written down up to "
                        + LONG_DAY.format(all.made()) + ".")
                .text(summary());
        map(paper);
        stands(paper);
        inputs(paper);
        lime(paper);
        notes(paper);
        return paper.bytes();
    }

    private String summary() {
        double wholeHa = sum(fields);
        double upHa = sum(in(FieldState.UP));
        double seededHa = sum(in(FieldState.SEEDED));
        double failedHa = sum(in(FieldState.FAILED));
        long again = fields.stream().filter(one -> one.seedings().size() > 1).count();
        return fields.size() + " fields, " + units.area(wholeHa) + ": "
                + Stream.of(
                                part("with a stand", upHa),
                                part("seeded and not yet looked at", seededHa),
                                part("thin or failed, to be done again", failedHa),
                                part("not seeded", wholeHa - upHa - seededHa - failedHa))
                        .filter(text -> !text.isEmpty())
                        .collect(Collectors.joining(", "))
                + "."
                + (again > 0 ? " Seeded a second time: " + again + "." : "");
    }

    private String part(String what, double areaHa) {
        return areaHa < 0.005 ? "" : units.area(areaHa) + " " + what;
    }

    private List<FieldYear> in(FieldState state) {
        return fields.stream().filter(one -> one.status().state() == state).toList();
    }

    private static double sum(List<FieldYear> some) {
        return some.stream().mapToDouble(one -> one.field().areaHa()).sum();
    }

    private void map(Paper paper) {
        List<FieldMap.Shape> shapes = fields.stream()
                .flatMap(one ->
                        Optional.ofNullable(all.boundaries().get(one.field().name()))
                                .flatMap(Outline::tree)
                                .map(tree -> new FieldMap.Shape(
                                        one.field().name(),
                                        one.field().place(),
                                        Outline.rings(tree),
                                        one.status().state()))
                                .stream())
                .toList();
        if (!shapes.isEmpty()) {
            new FieldMap(shapes).on(paper, MAP_PT);
            paper.small("North is up. Green: a stand. Light green: seeded. Red-brown: thin or"
                    + " failed. Sand: in work. White: not begun. Grey: left out.");
        }
    }

    private void stands(Paper paper) {
        List<List<String>> rows = new ArrayList<>();
        for (FieldYear one : fields) {
            if (one.seedings().isEmpty()) {
                rows.add(List.of(
                        one.field().name(),
                        units.area(one.field().areaHa()),
                        "",
                        "",
                        "",
                        one.status().state().words(),
                        ""));
            }
            int count = one.seedings().size();
            for (int i = 0; i < count; i++) {
                FieldYear.Seeding seeding = one.seedings().get(i);
                boolean first = i == 0;
                boolean last = i == count - 1;
                rows.add(List.of(
                        first ? one.field().name() : "",
                        first ? units.area(one.field().areaHa()) : "again",
                        seeding.mix(),
                        DAY.format(seeding.day()),
                        last ? one.rainAfter().map(rain -> rain.words(units)).orElse("") : "",
                        seeding.look().map(SeasonReport::found).orElse("not looked at yet"),
                        chance(seeding)));
            }
        }
        paper.heading("What went in and what came up")
                .table(
                        new float[] {3, 1.5f, 2.6f, 1.3f, 1.7f, 3.4f, 1.5f},
                        List.of("field", "area", "mix", "seeded", "rain after", "found", "chance"),
                        rows)
                .small(
                        "Rain after: measured since the last seeding, up to thirty days. Chance: of a"
                                + " stand, as reckoned before the seed went in.");
    }

    private static String found(StandBook.StandCheck look) {
        String counted = look.finding().countedFraction().isPresent()
                ? String.format(
                        Locale.ROOT,
                        ", %.0f %% of the seed",
                        100 * look.finding().countedFraction().getAsDouble())
                : "";
        return Spelled.spaced(look.result())
                + look.finding()
                        .cause()
                        .map(c -> " (" + Spelled.spaced(c) + ")")
                        .orElse("")
                + counted;
    }

    private static String chance(FieldYear.Seeding seeding) {
        return seeding.look()
                .filter(look -> look.finding().chanceAtSeeding().isPresent())
                .map(look -> String.format(
                        Locale.ROOT,
                        "%.0f %%",
                        100 * look.finding().chanceAtSeeding().getAsDouble()))
                .orElse("");
    }

    private void inputs(Paper paper) {
        List<List<String>> rows = fields.stream()
                .flatMap(one -> one.applied().stream()
                        .filter(work -> !work.what().used().isEmpty())
                        .map(work -> List.of(
                                one.field().name(),
                                DAY.format(work.day()),
                                work.what().stage(),
                                units.area(work.what().areaHa()),
                                used(work),
                                work.by())))
                .toList();
        if (!rows.isEmpty()) {
            paper.heading("What was put on and in")
                    .table(
                            new float[] {3, 1.2f, 1.5f, 1.5f, 6, 1.5f},
                            List.of("field", "day", "stage", "area", "used", "by"),
                            rows);
        }
    }

    private String used(FieldYear.Work work) {
        return work.what().used().stream()
                .map(used -> used.item() + " " + units.mass(used.massKg()) + " ("
                        + units.text(Quantity.RATE, used.massKg() / work.what().areaHa(), 1) + ")")
                .collect(Collectors.joining(", "));
    }

    private void lime(Paper paper) {
        List<List<String>> rows = fields.stream()
                .flatMap(
                        one -> Optional.ofNullable(all.spreads().get(one.field().name())).stream())
                .map(this::limeRow)
                .toList();
        paper.heading("Lime and soil tests")
                .table(
                        new float[] {3, 2, 3.4f, 5.6f},
                        List.of("field", "soil test", "lime still to come", "pH"),
                        rows)
                .small("A pH is promised as a range only; lime works over three years and more.");
        List<String> gaps = fields.stream()
                .flatMap(
                        one -> Optional.ofNullable(all.spreads().get(one.field().name())).stream())
                .flatMap(spread -> spread.gaps().stream())
                .map(Gap::text)
                .distinct()
                .toList();
        if (!gaps.isEmpty()) {
            paper.text("To be measured:");
            gaps.forEach(paper::small);
        }
    }

    private List<String> limeRow(FieldSpread spread) {
        return List.of(
                spread.asked().plot().field(),
                spread.asked().test().map(test -> test.sampledOn().toString()).orElse("none"),
                spread.lime()
                        .map(this::doses)
                        .orElse(spread.asked().test().isPresent() ? "none" : "not known"),
                spread.lime()
                        .map(dose -> dose.path().words())
                        .orElseGet(() -> spread.asked()
                                .test()
                                .map(test -> String.format(
                                        Locale.ROOT,
                                        "pH %.1f as tested",
                                        test.acidity().ph()))
                                .orElse("")));
    }

    private String doses(LimeDose dose) {
        Stream<String> now = dose.nowKgPerHa() > 0
                ? Stream.of(yearly(all.made().getYear(), dose.nowKgPerHa()))
                : Stream.empty();
        return Stream.concat(
                        now,
                        dose.later().doses().stream()
                                .map(later -> yearly(later.year(), later.rateKgPerHa())))
                .collect(Collectors.joining(", "));
    }

    private String yearly(int year, double rateKgPerHa) {
        return year + ": " + units.text(Quantity.RATE, rateKgPerHa, 0);
    }

    private void notes(Paper paper) {
        List<String> notes = fields.stream()
                .flatMap(one -> one.notes().stream().map(n -> one.field().name() + ": " + n))
                .toList();
        if (!notes.isEmpty()) {
            paper.heading("Notes");
            notes.forEach(paper::text);
        }
    }
}
