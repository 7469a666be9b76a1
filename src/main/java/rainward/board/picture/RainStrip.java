package rainward.board.picture;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import rainward.cycle.RainPicture;
import rainward.farm.DayClock;
import rainward.farm.UnitSystem;

/**
 * Rain ahead in steps of six hours: how likely, and how much it may be.
 *
 * @param bars in order of time
 * @param ticks days
 * @param most what reaches the upper edge, in words
 */
public record RainStrip(List<Bar> bars, List<TimeScale.Tick> ticks, String most) {

    /** Height of the drawing [px]. */
    public static final int HEIGHT_PX = 84;

    private static final double LEAST_SCALE_MM = 10;

    /** On the narrowest drawing two figures need so much between them. */
    private static final Duration CLOSE = Duration.ofHours(24);

    public RainStrip {
        bars = List.copyOf(bars);
        ticks = List.copyOf(ticks);
    }

    /**
     * Six hours.
     *
     * @param x where they begin
     * @param width how wide
     * @param meanPx height of the mean amount [px]
     * @param muchPx height of the amount that one time in ten exceeds [px]
     * @param label chance, where it is worth saying
     * @param title all of it
     * @param besides true where likelier six hours close by say enough on a telephone
     */
    public record Bar(
            String x,
            String width,
            int meanPx,
            int muchPx,
            String label,
            String title,
            boolean besides) {}

    /**
     * How people read it.
     *
     * @param scale of time
     * @param clock of the farm
     * @param units of the farm
     */
    public record Reading(TimeScale scale, DayClock clock, UnitSystem units) {}

    public static RainStrip of(List<RainPicture.Bar> ahead, Reading reading) {
        TimeScale scale = reading.scale();
        double mostMm = Math.max(
                LEAST_SCALE_MM,
                ahead.stream().mapToDouble(RainPicture.Bar::p90Mm).max().orElse(0));
        Collection<RainPicture.Bar> likeliest = likeliest(ahead);
        List<Bar> bars = ahead.stream()
                .filter(bar -> bar.window().overlaps(scale.span()))
                .map(bar -> bar(bar, mostMm, reading, !likeliest.contains(bar)))
                .toList();
        return new RainStrip(bars, scale.days(reading.clock()), reading.units().roughRain(mostMm));
    }

    /** The likeliest six hours, then the next ones that are not close to those. */
    private static Collection<RainPicture.Bar> likeliest(List<RainPicture.Bar> ahead) {
        List<RainPicture.Bar> chosen = new ArrayList<>();
        ahead.stream()
                .sorted(Comparator.comparingDouble(RainPicture.Bar::chance).reversed())
                .filter(bar -> chosen.stream().noneMatch(other -> close(bar, other)))
                .forEach(chosen::add);
        return chosen;
    }

    private static boolean close(RainPicture.Bar bar, RainPicture.Bar other) {
        Duration apart =
                Duration.between(bar.window().from(), other.window().from()).abs();
        return apart.compareTo(CLOSE) < 0;
    }

    private static Bar bar(RainPicture.Bar bar, double mostMm, Reading reading, boolean besides) {
        int chance = (int) Math.round(100 * bar.chance());
        return new Bar(
                reading.scale().x(bar.window().from()),
                reading.scale().width(bar.window()),
                (int) Math.round(bar.meanMm() / mostMm * (HEIGHT_PX - 36)),
                (int) Math.round(bar.p90Mm() / mostMm * (HEIGHT_PX - 36)),
                chance >= 10 ? String.valueOf(chance) : "",
                String.format(
                        Locale.ROOT,
                        "%s: chance %d%%, mean %s, one time in ten above %s",
                        reading.clock().daySpan(bar.window()),
                        chance,
                        reading.units().rain(bar.meanMm()),
                        reading.units().rain(bar.p90Mm())),
                besides);
    }
}
