package rainward.replay.crew;

import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import rainward.farm.GeoPoint;
import rainward.farm.Machine;
import rainward.weather.source.ForecastSeries;

/** Simple policies: fields in a row by one figure, each machine takes the first it can work on. */
final class Ranking implements Foreman {

    private final Policy policy;
    private final Rounds rounds;
    private final World world;
    private final GivenOrder given = new GivenOrder();
    private final Map<String, Double> figure = new HashMap<>();

    Ranking(Policy policy, World world, Rounds rounds) {
        this.policy = policy;
        this.world = world;
        this.rounds = rounds;
    }

    @Override
    public void consider(Instant now, List<FieldWork> fields) {
        figure.clear();
        switch (policy) {
            case LARGEST_FIRST ->
                fields.forEach(f -> figure.put(f.field().name(), -f.field().areaHa()));
            case READIEST_FIRST ->
                rounds.readiness(now, fields).forEach((field, score) -> figure.put(field, -score));
            case RAIN_SOONEST -> rainSoonest(now, fields);
            default -> {
                // The list as it stands, or the road, decides.
            }
        }
        if (policy != Policy.NEAREST_NEXT) {
            Set<String> open = fields.stream()
                    .filter(FieldWork::open)
                    .map(f -> f.field().name())
                    .collect(Collectors.toSet());
            given.tell(
                    fields.stream()
                            .filter(FieldWork::open)
                            .sorted(byFigure())
                            .map(f -> f.field().name())
                            .toList(),
                    open);
        }
    }

    private Comparator<FieldWork> byFigure() {
        return Comparator.comparingDouble(f -> figure.getOrDefault(f.field().name(), 0.0));
    }

    /** Hours to the first half day with an even chance of rain, then the lesser chance first. */
    private void rainSoonest(Instant now, List<FieldWork> fields) {
        Map<String, Double> byProperty = fields.stream()
                .map(f -> f.field().property())
                .distinct()
                .collect(Collectors.toMap(
                        Function.identity(), p -> arrival(world.forecast(p, now))));
        fields.forEach(
                f -> figure.put(f.field().name(), byProperty.get(f.field().property())));
    }

    private static double arrival(ForecastSeries forecast) {
        double index = 0;
        double best = 0;
        for (var chance : forecast.rain().probabilities()) {
            if (chance.probability() >= 0.5) {
                return index - chance.probability();
            }
            best = Math.max(best, chance.probability());
            index++;
        }
        return index - best;
    }

    @Override
    public List<Wanted> wanted(Machine machine, GeoPoint at, Instant now, List<FieldWork> open) {
        Comparator<FieldWork> order = policy == Policy.NEAREST_NEXT
                ? Comparator.comparingDouble(
                        f -> at.distanceKm(world.property(f.field().property()).place()))
                : byFigure();
        return open.stream().sorted(order).map(Wanted::plain).toList();
    }

    @Override
    public int changes() {
        return given.changes();
    }
}
