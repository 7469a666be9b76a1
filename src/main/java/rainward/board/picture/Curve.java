package rainward.board.picture;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.function.IntToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import rainward.readiness.Figures;
import rainward.stand.StandOutlook;

/**
 * A line, and perhaps the range around it, on a field of 1000 by 100.
 *
 * @param name what it shows
 * @param line its points
 * @param range points around the range; empty where there is none
 */
public record Curve(String name, String line, String range) {

    private static final double WIDTH = 10;
    private static final int HEIGHT = 100;

    /** Chance of a stand by hour of seeding. */
    public static Curve ofChance(StandOutlook stand, TimeScale scale) {
        String line = points(
                stand.seedingHours(),
                i -> scale.percentOf(stand.start().plusSeconds(3600L * i)),
                i -> stand.chance()[i]);
        return new Curve(stand.mix(), line, "");
    }

    /**
     * Water at seed depth with its range.
     *
     * @param fullFraction what reaches the upper edge [m3/m3]
     */
    public static Curve ofWater(Figures.Course course, TimeScale scale, double fullFraction) {
        List<Figures.Range> ranges = course.ranges();
        IntToDoubleFunction x = i -> scale.percentOf(at(course, i));
        String middle = points(ranges.size(), x, i -> ranges.get(i).middle() / fullFraction);
        String low = points(ranges.size(), x, i -> ranges.get(i).low() / fullFraction);
        int last = ranges.size() - 1;
        String high = points(
                ranges.size(),
                i -> x.applyAsDouble(last - i),
                i -> ranges.get(last - i).high() / fullFraction);
        return new Curve("water", middle, low + " " + high);
    }

    private static Instant at(Figures.Course course, int index) {
        return course.timeOf(index);
    }

    private static String points(int count, IntToDoubleFunction x, IntToDoubleFunction share) {
        return IntStream.range(0, count)
                .mapToObj(i -> String.format(
                        Locale.ROOT,
                        "%.1f,%.1f",
                        WIDTH * x.applyAsDouble(i),
                        HEIGHT * (1 - Math.min(1, Math.max(0, share.applyAsDouble(i))))))
                .collect(Collectors.joining(" "));
    }
}
