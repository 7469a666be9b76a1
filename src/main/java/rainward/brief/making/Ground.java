package rainward.brief.making;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rainward.brief.Literal;
import rainward.brief.SoilLine;
import rainward.brief.SoilLine.Workable;
import rainward.cycle.Outlook;
import rainward.cycle.Outlook.FieldOutlook;
import rainward.cycle.Outlook.Seedbed;

/** The soil of the waiting fields, those of a property that are alike in one line. */
final class Ground {

    private Ground() {}

    /** What makes two fields alike. */
    private record Likeness(String property, Seedbed.Wetness wetness, boolean now) {}

    static List<SoilLine> of(Outlook outlook) {
        Map<Likeness, List<FieldOutlook>> alike = outlook.fields().stream()
                .filter(f -> f.item().status().waiting() && f.seedbed().isPresent())
                .collect(Collectors.groupingBy(
                        f -> likeness(f, outlook.asOf()),
                        () -> new TreeMap<>(Comparator.comparing(Likeness::property)
                                .thenComparing(Likeness::wetness)
                                .thenComparing(Likeness::now)),
                        Collectors.toList()));
        return alike.entrySet().stream()
                .map(e -> line(e.getKey(), e.getValue()))
                .toList();
    }

    private static Likeness likeness(FieldOutlook field, Instant asOf) {
        Seedbed bed = field.seedbed().orElseThrow();
        boolean now = bed.workableFrom().filter(from -> !from.isAfter(asOf)).isPresent();
        return new Likeness(field.item().field().property(), bed.wetness(), now);
    }

    private static SoilLine line(Likeness like, List<FieldOutlook> fields) {
        List<Seedbed> beds = fields.stream().flatMap(f -> f.seedbed().stream()).toList();
        double tempC = beds.stream().mapToDouble(Seedbed::tempC).average().orElseThrow();
        return new SoilLine(
                Literal.of(like.property()),
                like.wetness(),
                tempC,
                new Workable(like.now(), like.now() ? Optional.empty() : allWorkableFrom(beds)),
                fields.stream()
                        .map(f -> Literal.of(f.item().field().name()))
                        .sorted()
                        .toList());
    }

    private static Optional<Instant> allWorkableFrom(List<Seedbed> beds) {
        return beds.stream().allMatch(bed -> bed.workableFrom().isPresent())
                ? beds.stream()
                        .flatMap(bed -> bed.workableFrom().stream())
                        .max(Comparator.naturalOrder())
                : Optional.empty();
    }
}
