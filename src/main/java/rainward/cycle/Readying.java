package rainward.cycle;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import rainward.farm.FieldCase;
import rainward.farm.Mix;
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

    Readiness of(FieldCase item, Optional<FieldReckoning> reckoning) {
        return ReadinessModel.usual()
                .of(new ReadinessCase(
                        item,
                        work(item),
                        reckoning.flatMap(r -> ahead(item, r)),
                        input.memory().outOfStock(),
                        new ReadinessCase.Teller(
                                input.asOf(), input.zone(), input.rules().units())));
    }

    private ReadinessCase.Work work(FieldCase item) {
        return input.roster()
                .recipeOf(item.field())
                .map(recipe -> openWork.of(item, recipe, input.asOf()))
                .orElse(new ReadinessCase.Work(List.of(), input.asOf()));
    }

    private Optional<ReadinessCase.Ahead> ahead(FieldCase item, FieldReckoning reckoning) {
        Map<String, Mix> mixes = input.roster().mixesOf(item.field()).stream()
                .collect(Collectors.toMap(Mix::name, Function.identity()));
        List<ReadinessCase.Option> options = reckoning.stands().stream()
                .flatMap(s -> Optional.ofNullable(mixes.get(s.mix())).stream()
                        .map(mix -> new ReadinessCase.Option(mix, s)))
                .toList();
        return Optional.ofNullable(input.weather().get(item.field().property()))
                .flatMap(CycleInput.PropertyWeather::forecast)
                .map(f -> new ReadinessCase.Ahead(
                        f.stamp(), reckoning.traces(), reckoning.soil(), options));
    }
}
