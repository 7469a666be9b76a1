package rainward.daemon.settings;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.Quantity;
import rainward.farm.Recipe;
import rainward.farm.SeedingMethod;
import rainward.farm.Stage;
import rainward.farm.StageLimits;

/**
 * Chains of stages.
 *
 * @param machines that there are to do them
 */
record RecipeReader(List<Machine> machines) {

    private static final Duration LONGEST = Duration.ofDays(120);

    List<Recipe> recipes(Section root) {
        List<Section> sections = root.tables("recipe");
        if (sections.isEmpty()) {
            root.wrong("recipe", "describe at least one chain of stages under [[recipe]]");
        }
        List<Recipe> recipes = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (Section section : sections) {
            String name = section.name("name");
            names.add(name);
            recipe(section, name).ifPresent(recipes::add);
            section.end();
        }
        WorkReader.once(sections, names);
        return recipes;
    }

    private Optional<Recipe> recipe(Section section, String name) {
        List<Section> entries = section.tables("stage");
        List<Stage> stages = entries.stream().map(this::stage).toList();
        WorkReader.once(entries, stages.stream().map(Stage::name).toList());
        long seeding =
                stages.stream().filter(s -> s.operation() == Operation.SEED).count();
        if (seeding != 1) {
            section.reading()
                    .fault(
                            section.path("stage"),
                            "has " + seeding + " stages with operation = \"seed\"",
                            "each recipe must have exactly one");
        }
        Set<String> distinct = new HashSet<>(stages.stream().map(Stage::name).toList());
        return seeding == 1 && distinct.size() == stages.size()
                ? Optional.of(new Recipe(name, stages))
                : Optional.empty();
    }

    private Stage stage(Section section) {
        String name = section.name("name");
        Operation operation = section.choice("operation", Operation.class);
        canBeDone(section, operation);
        Duration least = section.span(
                "least_wait", Bounds.Span.usually(Duration.ZERO, Duration.ZERO, LONGEST));
        Optional<Duration> greatest = section.maybeSpan(
                "greatest_wait", new Bounds.Span(Optional.empty(), Duration.ZERO, LONGEST));
        if (greatest.filter(most -> most.compareTo(least) < 0).isPresent()) {
            section.wrong("greatest_wait", "must not be below least_wait, " + Written.words(least));
            greatest = Optional.empty();
        }
        Stage read = new Stage(name, operation, least, greatest, limits(section, operation));
        section.end();
        return read;
    }

    private void canBeDone(Section section, Operation operation) {
        boolean done = machines.stream().anyMatch(m -> m.operations().contains(operation));
        if (!done && section.has("operation")) {
            section.wrong(
                    "operation",
                    "no machine can do this; add \""
                            + operation.name().toLowerCase(Locale.ROOT)
                            + "\" to the operations of the one that does");
        }
    }

    private static StageLimits limits(Section section, Operation operation) {
        OptionalDouble greatest = wind(section, "greatest_wind");
        OptionalDouble least = wind(section, "least_wind");
        if (least.orElse(0) >= greatest.orElse(Double.POSITIVE_INFINITY)) {
            section.wrong("least_wind", "must be below greatest_wind");
        }
        return new StageLimits(
                section.flag("workable_soil", true),
                greatest,
                least,
                section.span(
                        "dry_after",
                        Bounds.Span.usually(Duration.ZERO, Duration.ZERO, Duration.ofDays(7))),
                method(section, operation),
                section.flag("rain_does_it", false));
    }

    private static OptionalDouble wind(Section section, String key) {
        return section.maybeAmount(key, Bounds.Amount.given(Quantity.WIND, 0.2, 30))
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
    }

    private static Optional<SeedingMethod> method(Section section, Operation operation) {
        if (operation == Operation.SEED) {
            return Optional.of(section.choice("method", SeedingMethod.class));
        }
        if (section.has("method")) {
            section.wrong("method", "belongs to the stage with operation = \"seed\" only");
        }
        return Optional.empty();
    }
}
