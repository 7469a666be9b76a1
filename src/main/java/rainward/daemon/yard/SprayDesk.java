package rainward.daemon.yard;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.daemon.office.Office;
import rainward.farm.FieldCase;
import rainward.farm.Mix;
import rainward.farm.Operation;
import rainward.farm.StageRecord;
import rainward.input.Gap;
import rainward.input.PlantBack;
import rainward.input.load.LoadSheet;
import rainward.store.Books;
import rainward.store.ledger.LedgerLine;

/**
 * Where sprays stand in the way of seed: the label's interval is the law, and nobody guesses it.
 */
public final class SprayDesk {

    /** Longest interval that a label is taken for; older sprays are past every crop. */
    private static final int LONGEST_DAYS = 1_500;

    private final Office office;

    public SprayDesk(Office office) {
        this.office = office;
    }

    /** What stops the seedings of a day, each with what to read or wait for. */
    public List<Gap> stops(Books books, LoadSheet sheet) {
        List<LedgerLine<PlantBack>> sprays = books.ledger().all(PlantBack.class);
        List<FieldCase> cases = books.cases();
        List<Gap> gaps = new ArrayList<>();
        sheet.machines().stream()
                .flatMap(machine -> machine.lines().stream())
                .filter(line -> line.item().sowing().isPresent())
                .forEach(line -> {
                    String field = line.item().place().field();
                    String mix = line.item().sowing().orElseThrow().mix();
                    List<PlantBack> here = sprays.stream()
                            .filter(spray -> spray.field().equals(Optional.of(field)))
                            .map(LedgerLine::entry)
                            .filter(spray ->
                                    spray.sprayedOn().isAfter(sheet.day().minusDays(LONGEST_DAYS)))
                            .toList();
                    gaps.addAll(ofField(field, mix, here, sheet.day()));
                    unwritten(cases, field, here).ifPresent(gaps::add);
                });
        return gaps.stream().distinct().toList();
    }

    private List<Gap> ofField(String field, String mix, List<PlantBack> sprays, LocalDate day) {
        Optional<Mix> known = Optional.ofNullable(office.mixes().get(mix));
        return sprays.stream()
                .map(PlantBack::product)
                .distinct()
                .flatMap(product -> known.stream()
                        .flatMap(m -> m.components().stream())
                        .map(component -> component.species().name())
                        .flatMap(crop -> stop(sprays, product, crop, day).stream()))
                .map(gap -> new Gap(field, gap.about() + ": " + gap.missing(), gap.remedy()))
                .toList();
    }

    /** The line for this crop decides; where none names it, its interval is not known. */
    private static Optional<Gap> stop(
            List<PlantBack> sprays, String product, String crop, LocalDate day) {
        List<PlantBack> of =
                sprays.stream().filter(s -> s.product().equals(product)).toList();
        LocalDate last =
                of.stream().map(PlantBack::sprayedOn).max(LocalDate::compareTo).orElseThrow();
        return of.stream()
                .filter(s -> s.crop().equalsIgnoreCase(crop) && s.sprayedOn().equals(last))
                .reduce((a, b) -> b)
                .orElseGet(() -> new PlantBack(product, crop, last, java.util.OptionalInt.empty()))
                .stops(day);
    }

    /** A spray stage that is done, with nothing written of what was sprayed. */
    private Optional<Gap> unwritten(List<FieldCase> cases, String field, List<PlantBack> written) {
        return cases.stream()
                .filter(item -> item.field().name().equals(field))
                .findFirst()
                .flatMap(item -> office.roster().recipeOf(item.field()).stream()
                        .flatMap(recipe -> recipe.stages().stream())
                        .filter(stage -> stage.operation() == Operation.SPRAY)
                        .flatMap(stage -> item.status().of(stage.name()).stream())
                        .filter(StageRecord::done)
                        .findFirst())
                .filter(done -> written.isEmpty())
                .map(done -> new Gap(
                        field,
                        "was sprayed, and what with is not written",
                        "enter product, day and the label's interval: rainward enter sprays FILE"));
    }
}
