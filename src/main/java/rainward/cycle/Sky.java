package rainward.cycle;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rainward.cycle.ground.Stretch;
import rainward.weather.past.ObservedWeather;
import rainward.weather.trace.PointForecast;
import rainward.weather.trace.PointTraces;
import rainward.weather.trace.TraceMaker;
import rainward.weather.trace.TraceSettings;
import rainward.weather.trace.Traces;

/** Weather ahead at every property that has a forecast. */
final class Sky {

    private Sky() {}

    /** Traces by property; properties without a forecast have none. */
    static Map<String, PointTraces> drawn(CycleInput input) {
        Map<String, PointForecast> known = new TreeMap<>();
        input.weather()
                .forEach((property, weather) ->
                        weather.ahead().ifPresent(f -> known.put(property, f)));
        CycleInput.Draw draw = input.rules().draw();
        List<PointTraces> made = TraceMaker.withEnsembles(
                List.copyOf(known.values()),
                new TraceSettings(draw.traces(), draw.seed(), input.traceHorizon()),
                draw.climate());
        Map<String, PointTraces> byProperty = new TreeMap<>();
        int next = 0;
        for (String property : known.keySet()) {
            byProperty.put(property, made.get(next++));
        }
        return byProperty;
    }

    /** Traces alone. */
    static Map<String, Traces> traces(Map<String, PointTraces> drawn) {
        return drawn.entrySet().stream()
                .collect(Collectors.toMap(Map.Entry::getKey, e -> e.getValue().traces()));
    }

    /** The weather that will come, as the one trace at each property that has a forecast. */
    static Map<String, Traces> known(CycleInput input, Map<String, ObservedWeather> future) {
        Map<String, Traces> known = new TreeMap<>();
        input.weather()
                .forEach((property, weather) -> weather.forecast()
                        .flatMap(f -> Optional.ofNullable(future.get(property)))
                        .ifPresent(all -> known.put(
                                property,
                                Stretch.trace(Stretch.of(
                                        all, input.firstHour(), all.air().end())))));
        return known;
    }
}
