package rainward.daemon.command;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Command;
import rainward.weather.trace.TraceTimes;

/** Weather traces on invented forecasts. */
@Command(
        name = "traces",
        description = {
            "Make 200 courses of weather of 240 hours at 36 places, with chances of rain by the",
            "hour and by six hours: milliseconds of one core, and nanoseconds an hourly value.",
            "Measured in a process with the heap and the collector of the packaged service."
        })
final class BenchTraces extends MeasuredApart {

    /**
     * The figures, as JSON shows them.
     *
     * @param tracesMs with chances by the hour, the harder case
     * @param nsPerValue the same over all hourly values of rain
     * @param sixHoursMs with chances by six hours
     * @param sixHoursNsPerValue the same over all hourly values of rain
     */
    record Answer(
            double tracesMs, double nsPerValue, double sixHoursMs, double sixHoursNsPerValue) {}

    @Override
    List<String> words() {
        return List.of("bench", "traces");
    }

    @Override
    String measured() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        double hourly = new TraceTimes(1).medianNanos(threads::getCurrentThreadCpuTime);
        double sixHours = new TraceTimes(6).medianNanos(threads::getCurrentThreadCpuTime);
        Answer answer = new Answer(
                hourly / 1e6,
                hourly / TraceTimes.VALUES,
                sixHours / 1e6,
                sixHours / TraceTimes.VALUES);
        return json
                ? Sheets.json(answer)
                : String.format(
                        Locale.US,
                        "Chances by the hour: %.1f ms, %.1f ns a value; by six hours: %.1f"
                                + " ms, %.1f ns a value.",
                        answer.tracesMs(),
                        answer.nsPerValue(),
                        answer.sixHoursMs(),
                        answer.sixHoursNsPerValue());
    }
}
