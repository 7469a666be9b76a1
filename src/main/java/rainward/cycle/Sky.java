package rainward.cycle;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rainward.cycle.ground.Stretch;
import rainward.farm.Window;
import rainward.weather.past.ObservedWeather;
import rainward.weather.trace.Foreseen;
import rainward.weather.trace.PointForecast;
import rainward.weather.trace.PointTraces;
import rainward.weather.trace.TraceMaker;
import rainward.weather.trace.TraceSettings;

/** Weather ahead at every property that has a forecast. */
final class Sky {

    private Sky() {}

    /** Traces by property; properties without a forecast have none. */
    static Map<String, PointTraces> drawn(CycleInput input) {
        CycleInput.Draw draw = input.rules().draw();
        return made(input, draw.traces(), input.traceHorizon());
    }

    /** Traces with what comes after them up to the judging of a stand. */
    static Map<String, Foreseen> foreseen(CycleInput input, Map<String, PointTraces> drawn) {
        int courses = LaterWeather.courses(input.rules().draw().traces());
        Map<String, PointTraces> later = made(input, courses, LaterWeather.span(input));
        return drawn.entrySet().stream()
                .collect(Collectors.toMap(
                        Map.Entry::getKey,
                        e -> new Foreseen(
                                e.getValue().traces(),
                                Optional.ofNullable(later.get(e.getKey()))
                                        .map(PointTraces::traces))));
    }

    private static Map<String, PointTraces> made(CycleInput input, int traces, Window horizon) {
        Map<String, PointForecast> known = new TreeMap<>();
        input.weather()
                .forEach((property, weather) ->
                        weather.ahead().ifPresent(f -> known.put(property, f)));
        CycleInput.Draw draw = input.rules().draw();
        List<PointTraces> made = TraceMaker.withEnsembles(
                List.copyOf(known.values()),
                new TraceSettings(traces, draw.seed(), horizon),
                draw.climate());
        Map<String, PointTraces> byProperty = new TreeMap<>();
        int next = 0;
        for (String property : known.keySet()) {
            byProperty.put(property, made.get(next++));
        }
        return byProperty;
    }

    /** The weather that will come, as the one trace at each property that has a forecast. */
    static Map<String, Foreseen> known(CycleInput input, Map<String, ObservedWeather> future) {
        Map<String, Foreseen> known = new TreeMap<>();
        input.weather()
                .forEach((property, weather) -> weather.forecast()
                        .flatMap(f -> Optional.ofNullable(future.get(property)))
                        .ifPresent(all -> known.put(
                                property,
                                new Foreseen(
                                        Stretch.trace(Stretch.of(
                                                all,
                                                input.traceHorizon().from(),
                                                input.traceHorizon().to())),
                                        LaterWeather.known(all, input)))));
        return known;
    }
}
