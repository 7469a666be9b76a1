package rainward.board.picture;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rainward.cycle.Outlook;
import rainward.cycle.RainPicture;
import rainward.farm.DayClock;
import rainward.farm.Window;
import rainward.queue.problem.PlanItem;

/**
 * A day of work by machine, with the rain over it.
 *
 * @param rows one a machine
 * @param ticks hours
 * @param rain chance of rain in steps of six hours
 * @param nowX where the present is, if it is in the day
 */
public record TimeLine(
        List<Row> rows, List<TimeScale.Tick> ticks, List<RainBar> rain, Optional<String> nowX) {

    /** Height of the rain above the rows, and of a row [px]. */
    public static final int RAIN_PX = 50;

    public static final int ROW_PX = 52;

    private static final int FIRST_HOUR = 5;
    private static final int LAST_HOUR = 21;

    public TimeLine {
        rows = List.copyOf(rows);
        ticks = List.copyOf(ticks);
        rain = List.copyOf(rain);
    }

    /** A machine with who runs it. */
    public record Row(String label, int topPx, List<Bar> bars) {}

    /**
     * A piece of work.
     *
     * @param x where it starts
     * @param width how long it is
     * @param rank place in the order, inside the bar
     * @param label beside it
     * @param room where the label has room
     * @param title all of it
     * @param field whose page tells more
     * @param kind names the pattern: the operation
     * @param begun true where it is under way
     */
    public record Bar(
            String x,
            String width,
            int rank,
            String label,
            Room room,
            String title,
            String field,
            String kind,
            boolean begun) {}

    /** The smallest window in which the label of a bar is not cut off. */
    public enum Room {
        ANY("besides"),
        WIDE("besides inwide"),
        NONE("unseen");

        private final String style;

        Room(String style) {
            this.style = style;
        }

        public String style() {
            return style;
        }

        /** Widths of the drawing in the smallest window of each sort, and of a sign [px]. */
        static Room of(double percent, int signs) {
            double needsPx = 12 + 8.5 * signs;
            return percent * 6 >= needsPx ? ANY : percent * 13.5 >= needsPx ? WIDE : NONE;
        }
    }

    /** Chance of rain in six hours at the wettest farm of the day. */
    public record RainBar(String x, String width, int heightPx, String label) {}

    public int heightPx() {
        return RAIN_PX + Math.max(1, rows.size()) * ROW_PX + 24;
    }

    /** Draws a day; it is widened where work lies outside the usual hours. */
    public static TimeLine of(Outlook outlook, Window day, DayClock clock, java.time.ZoneId zone) {
        List<PlanItem> items = outlook.plan().items().stream()
                .filter(item -> item.work().overlaps(day))
                .sorted(Comparator.comparing(item -> item.work().from()))
                .toList();
        TimeScale scale = new TimeScale(shown(items, day), zone);
        Instant now = outlook.asOf();
        return new TimeLine(
                rows(items, outlook, scale, clock),
                scale.hours(3, clock),
                rain(outlook, scale),
                scale.span().contains(now) ? Optional.of(scale.x(now)) : Optional.empty());
    }

    private static Window shown(List<PlanItem> items, Window day) {
        Instant from = day.from().plus(Duration.ofHours(FIRST_HOUR));
        Instant to = day.from().plus(Duration.ofHours(LAST_HOUR));
        for (PlanItem item : items) {
            from = item.work().from().isBefore(from) ? item.work().from() : from;
            to = item.work().to().isAfter(to) ? item.work().to() : to;
        }
        return new Window(
                from.isBefore(day.from()) ? day.from() : from,
                to.isAfter(day.to()) ? day.to() : to);
    }

    private static List<Row> rows(
            List<PlanItem> items, Outlook outlook, TimeScale scale, DayClock clock) {
        Map<String, List<PlanItem>> byMachine = new TreeMap<>();
        items.forEach(item -> byMachine
                .computeIfAbsent(item.hands().machine(), m -> new ArrayList<>())
                .add(item));
        List<Row> rows = new ArrayList<>();
        byMachine.forEach((machine, work) -> {
            String who = String.join(
                    ", ", work.stream().map(i -> i.hands().person()).distinct().toList());
            rows.add(new Row(
                    machine + " · " + who,
                    RAIN_PX + rows.size() * ROW_PX,
                    work.stream().map(i -> bar(i, outlook, scale, clock)).toList()));
        });
        return rows;
    }

    private static Bar bar(PlanItem item, Outlook outlook, TimeScale scale, DayClock clock) {
        boolean begun = outlook.field(item.place().field())
                .map(f -> f.item().status().underWay(item.place().stage()).isPresent())
                .orElse(false);
        String label = shortName(item.place().field());
        double percent =
                scale.percentOf(item.work().to()) - scale.percentOf(item.work().from());
        return new Bar(
                scale.x(item.work().from()),
                scale.width(item.work()),
                item.rank(),
                label,
                Room.of(percent, (item.rank() + " " + label).length()),
                item.rank() + ". " + item.place().field() + ", " + item.place().stage() + ", "
                        + clock.span(item.work()) + setting(item),
                item.place().field(),
                item.place().operation().name().toLowerCase(Locale.ROOT),
                begun);
    }

    private static String setting(PlanItem item) {
        return item.setting().isZero()
                ? ""
                : ", before it " + item.setting().toMinutes() + " min to change the mix";
    }

    /** Names mostly begin with a short code; else the whole is shown as far as there is room. */
    private static String shortName(String field) {
        String first = field.split(" ", 2)[0];
        return first.length() <= 5 && first.chars().anyMatch(Character::isDigit) ? first : field;
    }

    private static List<RainBar> rain(Outlook outlook, TimeScale scale) {
        Map<Window, Double> wettest = new TreeMap<>(Comparator.comparing(Window::from));
        for (RainPicture picture : outlook.rain().values()) {
            for (RainPicture.Bar bar : picture.bars()) {
                if (bar.window().overlaps(scale.span())) {
                    wettest.merge(bar.window(), bar.chance(), Math::max);
                }
            }
        }
        List<RainBar> bars = new ArrayList<>();
        wettest.forEach((window, chance) -> bars.add(new RainBar(
                scale.x(window.from()),
                scale.width(window),
                (int) Math.round(chance * (RAIN_PX - 18)),
                Math.round(100 * chance) + "%")));
        return bars;
    }
}
