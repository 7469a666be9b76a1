package rainward.cycle;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import rainward.cycle.ground.Stretch;
import rainward.farm.Window;
import rainward.stand.StandRules;
import rainward.weather.past.ObservedWeather;
import rainward.weather.trace.Traces;

/**
 * What the weather may do from the end of the traces to the day on which a stand is judged: drawn
 * like the traces, so by what a forecast still says and by the month's usual weather where it says
 * nothing, but on fewer courses, which several traces share.
 */
final class LaterWeather {

    /** So many traces share one course; what that costs in accuracy is measured in a test. */
    private static final int TRACES_PER_COURSE = 5;

    private static final int LEAST_COURSES = 20;

    private LaterWeather() {}

    /** From the end of the traces to the judging of seed that goes in first. */
    static Window span(CycleInput input) {
        Instant judged = input.firstHour()
                .plus(Duration.ofHours(Math.round(24 * StandRules.DEFAULT.checkDays())));
        return new Window(input.traceHorizon().to(), judged);
    }

    /** How many are drawn beside so many traces. */
    static int courses(int traces) {
        return Math.max(Math.min(LEAST_COURSES, traces), traces / TRACES_PER_COURSE);
    }

    /** The one course that came, as far as it is known. */
    static Optional<Traces> known(ObservedWeather weather, CycleInput input) {
        Window span = span(input);
        Instant end = weather.air().end().isBefore(span.to()) ? weather.air().end() : span.to();
        return end.isAfter(span.from())
                ? Optional.of(Stretch.trace(Stretch.of(weather, span.from(), end)))
                : Optional.empty();
    }
}
