package rainward.weather.past;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.BinaryOperator;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rainward.farm.Window;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.past.PastWeather.Frame;
import rainward.weather.past.PastWeather.Known;
import rainward.weather.past.PastWeather.RainDay;
import rainward.weather.rain.HourGrid;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainObservation;
import rainward.weather.rain.RainOrigin;
import rainward.weather.rain.RainShares;
import rainward.weather.rain.StormBlock;

/**
 * Rain of the past by the hour.
 *
 * <ol>
 *   <li>Totals are taken by rank ({@link RainOrigin}), the shorter window before the longer, the
 *       newer value before the older. Each fixes the hours of its window that nothing before it
 *       fixed.
 *   <li>Such hours get what is left of the total after the hours already fixed, never below zero.
 *   <li>They get it in the course of the hourly analysis; where that is dry or absent, in one storm
 *       ({@link StormBlock}) at a place drawn from the seed and the window's start.
 *   <li>Hours that nothing covers get the month's usual rain: a wet day of the month's mean as
 *       often as the month has them, evenly spaced, so that the sum is right and nothing is drawn.
 * </ol>
 *
 * A window's hours are those whose middle it holds, or the one it begins in. A total of more than
 * 305 mm an hour is no rain but a fault, and is left out by name.
 */
final class PastRain {

    /**
     * No hour gets more: the heaviest on record, 305 mm in 42 minutes at Holt, Missouri, in 1947
     * (from memory) [mm].
     */
    private static final double MOST_IN_AN_HOUR_MM = 305;

    /** A storm of more falls evenly, so that no hour of it passes the record [mm]. */
    private static final double STORM_UP_TO_MM = 300;

    private final Frame frame;
    private final HourGrid grid;
    private final double[] rainMm;
    private final @Nullable Total[] owner;
    private final BitSet timed = new BitSet();
    private final BitSet inCourse = new BitSet();
    private final double[] courseMm;
    private final List<String> faults = new ArrayList<>();

    private PastRain(Known known, Frame frame) {
        this.frame = frame;
        this.grid = frame.grid();
        this.rainMm = new double[grid.hours()];
        this.owner = new Total[grid.hours()];
        this.courseMm = course(known);
    }

    static PastRain of(Known known, Frame frame) {
        PastRain rain = new PastRain(known, frame);
        rain.totals(known).filter(rain::believable).sorted(Total.ORDER).forEach(rain::fix);
        rain.farmDays().forEach(rain::fillUsual);
        return rain;
    }

    double[] rainMm() {
        return rainMm;
    }

    List<RainDay> days() {
        return farmDays().map(this::rainDay).toList();
    }

    /** Runs of days that nobody observed. */
    List<String> warnings(List<RainDay> days) {
        List<String> warnings = new ArrayList<>(faults);
        List<RainDay> run = new ArrayList<>();
        for (RainDay day : days) {
            if (!run.isEmpty() && day.origin() != run.get(0).origin()) {
                warnings.add(gap(run));
                run.clear();
            }
            if (!day.origin().observed()) {
                run.add(day);
            }
        }
        if (!run.isEmpty()) {
            warnings.add(gap(run));
        }
        return warnings;
    }

    private static String gap(List<RainDay> run) {
        String days = run.size() == 1
                ? "" + run.get(0).day()
                : run.get(0).day() + " to " + run.get(run.size() - 1).day();
        return days
                + ": nobody observed the rain; "
                + (run.get(0).origin() == RainOrigin.FORECAST
                        ? "what had been forecast is used"
                        : "the month's usual rain is used");
    }

    private record Total(
            RainOrigin origin, Window window, double amountMm, Instant fetchedAt, String by) {

        RainShare.From from() {
            return new RainShare.From(origin, by);
        }

        static final Comparator<Total> ORDER = Comparator.comparing(Total::origin)
                .thenComparing(total -> total.window.length())
                .thenComparing(Total::fetchedAt, Comparator.reverseOrder());
    }

    private Stream<Total> totals(Known known) {
        Stream<Total> observed = known.rain().stream()
                .map(o -> new Total(
                        RainOrigin.of(o), o.window(), o.amountMm(), o.fetchedAt(), o.by()));
        Stream<Total> daily = known.days().stream()
                .filter(day -> day.rainMm().isPresent())
                .map(day -> new Total(
                        RainOrigin.DAILY_ANALYSIS,
                        wholeDay(day.day()),
                        day.rainMm().orElse(0),
                        Instant.MIN,
                        "daily weather"));
        Stream<Total> forecast = known.forecastRain().stream()
                .map(a -> new Total(
                        RainOrigin.FORECAST, a.window(), a.amountMm(), Instant.MIN, "forecast"));
        return Stream.of(observed, daily, forecast).flatMap(s -> s);
    }

    /** The hourly analysis, of several values for one window the newest. */
    private double[] course(Known known) {
        Map<Window, RainObservation> newest = known.rain().stream()
                .filter(o -> RainOrigin.of(o) == RainOrigin.HOURLY_ANALYSIS)
                .filter(o -> couldFall(o.amountMm(), o.window()))
                .collect(Collectors.toMap(
                        RainObservation::window,
                        Function.identity(),
                        BinaryOperator.maxBy(Comparator.comparing(RainObservation::fetchedAt))));
        List<RainAmount> hourly = newest.values().stream()
                .sorted(Comparator.comparing(o -> o.window().from()))
                .map(o -> new RainAmount(o.window(), o.amountMm()))
                .toList();
        hourly.forEach(a -> Arrays.stream(hoursOf(a.window())).forEach(inCourse::set));
        return RainShares.hourlyMm(hourly, grid.start(), grid.hours());
    }

    private boolean believable(Total total) {
        boolean rain = couldFall(total.amountMm, total.window);
        if (!rain) {
            faults.add(total.window.from()
                    + ": "
                    + Math.round(total.amountMm)
                    + " mm in "
                    + Math.round(hours(total.window))
                    + " h is more than has ever fallen; left out");
        }
        return rain;
    }

    private static boolean couldFall(double mm, Window window) {
        return mm <= MOST_IN_AN_HOUR_MM * hours(window);
    }

    private static double hours(Window window) {
        return Math.max(1, window.length().toMinutes() / 60.0);
    }

    private void fix(Total total) {
        int[] all = hoursOf(total.window);
        int[] free = Arrays.stream(all).filter(h -> owner[h] == null).toArray();
        if (free.length == 0) {
            return;
        }
        double inside = total.amountMm * all.length / reach(total.window).hours();
        double fixed = Arrays.stream(all).mapToDouble(h -> rainMm[h]).sum();
        double left = Math.min(Math.max(0, inside - fixed), MOST_IN_AN_HOUR_MM * free.length);
        boolean known = spread(left, free, total.window.from()) || free.length == 1;
        for (int h : free) {
            owner[h] = total;
            timed.set(h, known && total.origin.observed());
        }
    }

    /**
     * Hours of which it was seen how much fell in them. A dry day that only a gauge or a daily
     * total tells of is not among them: had it rained, its hours would not be known, and to count
     * days only where they are dry makes every forecast look too wet.
     */
    BitSet timedHours() {
        return timed;
    }

    /** Puts an amount into hours; false where nobody would have seen in which of them it fell. */
    private boolean spread(double mm, int[] hours, Instant from) {
        boolean watched = Arrays.stream(hours).allMatch(inCourse::get);
        double course = Arrays.stream(hours).mapToDouble(h -> courseMm[h]).sum();
        double peak = Arrays.stream(hours).mapToDouble(h -> courseMm[h]).max().orElse(0);
        if (course > 0 && mm * peak / course <= MOST_IN_AN_HOUR_MM) {
            Arrays.stream(hours).forEach(h -> rainMm[h] = mm * courseMm[h] / course);
            return watched;
        }
        if (mm > STORM_UP_TO_MM) {
            Arrays.stream(hours).forEach(h -> rainMm[h] = mm / hours.length);
        } else if (mm > 0) {
            storm(mm, hours, from);
        }
        return watched && mm <= 0;
    }

    private void storm(double mm, int[] hours, Instant from) {
        var random = new SplittableRandom(frame.seed() * 31 + from.getEpochSecond());
        int longest = Math.min(hours.length, StormBlock.LONGEST_H);
        int duration = random.nextInt(1, longest + 1);
        int start = random.nextInt(hours.length - duration + 1);
        double[] shares = StormBlock.of(duration);
        for (int h = 0; h < duration; h++) {
            rainMm[hours[start + h]] = mm * shares[h];
        }
    }

    private void fillUsual(LocalDate day) {
        int[] free = Arrays.stream(hoursOf(wholeDay(day)))
                .filter(h -> owner[h] == null)
                .toArray();
        if (free.length == 0) {
            return;
        }
        MonthlyClimate month = frame.climate().on(day);
        double wet = month.wetDayFraction();
        boolean isWet =
                Math.floor((day.toEpochDay() + 1) * wet) > Math.floor(day.toEpochDay() * wet);
        double mm = isWet ? month.meanWetDayMm() * free.length / 24 : 0;
        spread(mm, free, wholeDay(day).from());
        Total usual = new Total(
                RainOrigin.CLIMATE,
                wholeDay(day),
                mm,
                Instant.MIN,
                frame.climate().region());
        Arrays.stream(free).forEach(h -> owner[h] = usual);
    }

    private RainDay rainDay(LocalDate day) {
        Map<RainShare.From, List<Integer>> byOwner = new LinkedHashMap<>();
        for (int h : hoursOf(wholeDay(day))) {
            Optional.ofNullable(owner[h])
                    .ifPresent(total -> byOwner.computeIfAbsent(
                                    total.from(), from -> new ArrayList<>())
                            .add(h));
        }
        List<RainShare> shares = byOwner.entrySet().stream()
                .map(e -> share(e.getKey(), e.getValue()))
                .sorted(Comparator.comparingInt(RainShare::hours)
                        .reversed()
                        .thenComparing(share -> share.from().origin()))
                .toList();
        return new RainDay(day, shares);
    }

    private RainShare share(RainShare.From from, List<Integer> hours) {
        double mm = hours.stream().mapToDouble(h -> rainMm[h]).sum();
        Optional<Instant> latest = hours.stream()
                .flatMap(h -> Optional.ofNullable(owner[h]).stream())
                .map(Total::fetchedAt)
                .filter(at -> at.isAfter(Instant.MIN))
                .max(Comparator.naturalOrder());
        return new RainShare(from, latest, hours.size(), mm);
    }

    private int[] hoursOf(Window window) {
        Reach reach = reach(window);
        int from = Math.max(0, reach.from);
        int to = Math.min(grid.hours(), reach.to);
        return IntStream.range(from, Math.max(from, to)).toArray();
    }

    private Reach reach(Window window) {
        int from = grid.firstMiddleFrom(window.from());
        int to = grid.firstMiddleFrom(window.to());
        int hour = grid.hourOf(window.from());
        return from < to ? new Reach(from, to) : new Reach(hour, hour + 1);
    }

    /** Hours of a window, also those outside the past that is asked for. */
    private record Reach(int from, int to) {

        int hours() {
            return to - from;
        }
    }

    private Window wholeDay(LocalDate day) {
        return Window.ofDay(day, frame.zone());
    }

    private Stream<LocalDate> farmDays() {
        LocalDate first = grid.start().atZone(frame.zone()).toLocalDate();
        LocalDate last = grid.end().minusSeconds(1).atZone(frame.zone()).toLocalDate();
        return first.datesUntil(last.plusDays(1));
    }
}
