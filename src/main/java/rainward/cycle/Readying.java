package rainward.cycle;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rainward.farm.FieldCase;
import rainward.readiness.Readiness;
import rainward.readiness.ReadinessCase;
import rainward.readiness.ReadinessModel;
import rainward.stand.StandCase;
import rainward.stand.StandOutlook;

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

    /**
     * A field that was reckoned.
     *
     * @param item the field
     * @param questions of the stand model, one a mix
     * @param stands its answers
     */
    Readiness of(FieldCase item, List<StandCase> questions, List<StandOutlook> stands) {
        List<ReadinessCase.Option> options = IntStream.range(0, stands.size())
                .mapToObj(m -> new ReadinessCase.Option(questions.get(m), stands.get(m)))
                .toList();
        StandCase wanted = questions.get(0);
        Optional<ReadinessCase.Ahead> ahead = Optional.ofNullable(
                        input.weather().get(item.field().property()))
                .flatMap(CycleInput.PropertyWeather::forecast)
                .map(f -> new ReadinessCase.Ahead(
                        f.stamp(), wanted.traces(), wanted.soil(), options));
        return of(item, ahead);
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
