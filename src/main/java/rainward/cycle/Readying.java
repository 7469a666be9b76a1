package rainward.cycle;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rainward.farm.FieldCase;
import rainward.readiness.Readiness;
import rainward.readiness.ReadinessCase;
import rainward.readiness.ReadinessModel;

/** Asks the readiness model about every field. */
final class Readying {

    private final CycleInput input;
    private final OpenWork openWork;

    Readying(CycleInput input) {
        this.input = input;
        this.openWork = new OpenWork(input.roster().crew());
    }

    /** A field that was not reckoned: what is missing is its answer. */
    Readiness of(FieldCase item) {
        return of(item, Optional.empty());
    }

    /** A field that was reckoned. */
    Readiness of(FieldReckoning field) {
        List<ReadinessCase.Option> options = IntStream.range(0, field.stands().size())
                .mapToObj(m -> new ReadinessCase.Option(
                        field.questions().get(m), field.stands().get(m)))
                .toList();
        Optional<ReadinessCase.Ahead> ahead = Optional.ofNullable(
                        input.weather().get(field.item().field().property()))
                .flatMap(CycleInput.PropertyWeather::forecast)
                .map(f ->
                        new ReadinessCase.Ahead(f.stamp(), field.traces(), field.soil(), options));
        return of(field.item(), ahead);
    }

    private Readiness of(FieldCase item, Optional<ReadinessCase.Ahead> ahead) {
        return ReadinessModel.usual()
                .of(new ReadinessCase(
                        item,
                        work(item),
                        ahead,
                        input.memory().outOfStock(),
                        new ReadinessCase.Teller(
                                input.asOf(), input.zone(), input.rules().units())));
    }

    private ReadinessCase.Work work(FieldCase item) {
        return input.roster()
                .recipeOf(item.field())
                .map(recipe -> openWork.of(item, recipe, input.asOf()))
                .orElse(new ReadinessCase.Work(
                        List.of(), input.asOf(), input.roster().crew().hours()));
    }
}
