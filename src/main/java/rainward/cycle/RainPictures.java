package rainward.cycle;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rainward.farm.Window;
import rainward.weather.rain.RainAmount;
import rainward.weather.trace.PointTraces;
import rainward.weather.trace.Traces;

/** Sums traces up to quarters of the farm's days. */
final class RainPictures {

    private static final int QUARTER_HOURS = 6;

    /**
     * A burst that moves small seed on bare tilled ground, 30-minute intensity [mm/h]; a rule of
     * thumb of one inch an hour, from memory.
     */
    private static final double HARD_RAIN_MM_PER_H = 25;

    private RainPictures() {}

    /** Quarters from the one that holds the first trace hour, by local clock. */
    static RainPicture of(PointTraces drawn, ZoneId zone) {
        Traces traces = drawn.traces();
        List<RainPicture.Bar> bars = new ArrayList<>();
        Instant end = traces.timeOf(traces.hours());
        Instant from = quarterOf(traces.start(), zone);
        while (from.isBefore(end)) {
            Instant to = quarterOf(from.plus(Duration.ofHours(QUARTER_HOURS + 1)), zone);
            bars.add(bar(traces, new Window(from, to)));
            from = to;
        }
        return new RainPicture(bars, drawn.basis());
    }

    private static Instant quarterOf(Instant instant, ZoneId zone) {
        LocalDate day = LocalDate.ofInstant(instant, zone);
        int hour = instant.atZone(zone).getHour() / QUARTER_HOURS * QUARTER_HOURS;
        return day.atTime(LocalTime.of(hour, 0)).atZone(zone).toInstant();
    }

    private static RainPicture.Bar bar(Traces traces, Window window) {
        int first = Math.max(0, traces.hourOf(window.from()));
        int last = Math.min(traces.hours(), traces.hourOf(window.to()));
        double[] totalMm = new double[traces.count()];
        boolean[] hard = new boolean[traces.count()];
        for (int h = first; h < last; h++) {
            for (int t = 0; t < totalMm.length; t++) {
                totalMm[t] += traces.rainMm()[h][t];
                hard[t] |= traces.peak30MmPerH()[h][t] >= HARD_RAIN_MM_PER_H;
            }
        }
        int wet = (int) Arrays.stream(totalMm)
                .filter(mm -> mm >= RainAmount.MEASURABLE_MM)
                .count();
        int hardOnes = 0;
        for (boolean burst : hard) {
            hardOnes += burst ? 1 : 0;
        }
        double n = totalMm.length;
        double meanMm = Arrays.stream(totalMm).sum() / n;
        Arrays.sort(totalMm);
        return new RainPicture.Bar(
                window, wet / n, meanMm, totalMm[(int) (0.9 * (n - 1))], hardOnes / n);
    }
}
