package rainward.replay.truth;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import rainward.farm.Property;
import rainward.farm.Window;
import rainward.soil.verify.StationYear;
import rainward.weather.climate.Climate;
import rainward.weather.climate.DailyWeather;
import rainward.weather.climate.DayCourse;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.climate.TempRange;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainChance;
import rainward.weather.source.ForecastSeries;

/**
 * Forecasts of one season, drawn from its truth. What a forecast sees of a period is a Brownian
 * bridge that ends at the truth: a later issue knows all that an earlier one knew and a little
 * more, none knows more than its lead allows ({@link ForecastSkill}), and the chances it gives are
 * reliable. Its errors are the same at all properties, as they lie close together.
 */
public final class DrawnForecasts {

    /** Common practice, no source: the files tell none, and evaporation hardly asks. */
    private static final double ELEVATION_M = 200;

    private static final int PERIOD_HOURS = 12;
    private static final int PERIODS = 15;

    /** Share of a day's departure from the climate that is foreseen, first and seventh day. */
    private static final double WARMTH_FIRST = 0.95;

    private static final double WARMTH_LAST = 0.5;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double GRID = 0.1;
    private static final double GRID_END = 4.5;

    private final TrueWeather truth;
    private final ZoneId zone;
    private final long seed;
    private final RainClimate climate;
    private final Climate usual;
    private final double[] correlation = new double[PERIODS];
    private final double[] gridMm;

    /**
     * The forecasts of a season.
     *
     * @param truth that they are drawn from
     * @param zone whose 5 and 17 o'clock the periods begin at
     * @param seed of their errors
     */
    public DrawnForecasts(TrueWeather truth, ZoneId zone, long seed) {
        this.truth = truth;
        this.zone = zone;
        this.seed = seed;
        this.climate = RainClimate.of(halfDays());
        this.usual = usual(truth.year());
        this.gridMm = DoubleStream.iterate(
                        climate.threshold() + GRID / 2, z -> z < GRID_END, z -> z + GRID)
                .map(climate::amountMm)
                .toArray();
        for (int lead = 0; lead < PERIODS; lead++) {
            double skill = ForecastSkill.brierSkill(PERIOD_HOURS * (lead + 0.5));
            correlation[lead] = ForecastSkill.correlation(skill, climate.wetChance());
        }
        // Two leads of one day have equal skill; the bridge needs some way to go between them.
        for (int lead = 1; lead < PERIODS; lead++) {
            correlation[lead] = Math.min(correlation[lead], correlation[lead - 1] - 1e-6);
        }
    }

    /** The climate that the forecasts fall back on; of the station's own days. */
    public Climate usual() {
        return usual;
    }

    /** Half days as the forecasts cut them, at 5 and 17 o'clock, all properties together. */
    private double[] halfDays() {
        return truth.byProperty().values().stream()
                .flatMapToDouble(weather -> {
                    Instant start = weather.air().start();
                    int first = (29 - start.atZone(zone).getHour()) % 24;
                    double[] sums = new double[(weather.rainMm().length - first) / PERIOD_HOURS];
                    for (int h = 0; h < PERIOD_HOURS * sums.length; h++) {
                        sums[h / PERIOD_HOURS] += weather.rainMm()[first + h];
                    }
                    return Arrays.stream(sums);
                })
                .toArray();
    }

    /**
     * The forecast of a morning.
     *
     * @param property where
     * @param day on whose 5 o'clock it is issued
     */
    public ForecastSeries of(Property property, LocalDate day) {
        Instant issue = day.atTime(5, 0).atZone(zone).toInstant();
        List<RainAmount> amounts = new ArrayList<>();
        List<RainChance> chances = new ArrayList<>();
        for (int lead = 0; lead < PERIODS; lead++) {
            Instant from = issue.plus(Duration.ofHours((long) PERIOD_HOURS * lead));
            Window period = new Window(from, from.plus(Duration.ofHours(PERIOD_HOURS)));
            double seen = seen(property, from, lead);
            double chance = ForecastSkill.chance(seen, correlation[lead], climate.threshold());
            chances.add(new RainChance(period, chance));
            amounts.add(new RainAmount(period, expectedMm(seen, correlation[lead])));
        }
        DayCourse air = new DayCourse(
                zone, new DayCourse.Site(property.place(), usual), d -> foreseen(d, day));
        return new ForecastSeries(
                new ForecastSeries.Stamp("drawn", issue, issue),
                property.place(),
                air.over(issue, PERIODS * PERIOD_HOURS),
                new ForecastSeries.RainOutlook(amounts, chances),
                List.of());
    }

    /** From the truth back to the lead, each step by draws that belong to the period. */
    private double seen(Property property, Instant from, int lead) {
        SplittableRandom random =
                new SplittableRandom(seed * 1_000_003 + from.getEpochSecond() / 3600);
        double dry = random.nextDouble();
        double at = 1;
        double seen = climate.latent(truth.rainMm(property.name(), from, PERIOD_HOURS), dry);
        for (int step = 0; step <= lead; step++) {
            double to = correlation[step] * correlation[step];
            seen = seen * to / at + Math.sqrt(to * (at - to) / at) * random.nextGaussian();
            at = to;
        }
        return seen;
    }

    /** Expected amount given what is seen, dry outcomes counted in [mm]. */
    private double expectedMm(double seen, double correlation) {
        double spread = Math.sqrt(1 - correlation * correlation);
        double sum = 0;
        for (int i = 0; i < gridMm.length; i++) {
            double z = climate.threshold() + GRID * (i + 0.5);
            sum += gridMm[i] * NORMAL.density((z - seen) / spread) / spread * GRID;
        }
        return sum;
    }

    private DailyWeather foreseen(LocalDate day, LocalDate issued) {
        int lead = (int) Math.max(0, Math.min(7, day.toEpochDay() - issued.toEpochDay()));
        double share = WARMTH_FIRST + (WARMTH_LAST - WARMTH_FIRST) * lead / 7.0;
        MonthlyClimate month = usual.on(day);
        double error = Math.sqrt(1 - share * share)
                * 4
                * TrueWeather.random(seed, day, "warmth" + lead).nextGaussian();
        TempRange came = known(day).orElse(new TempRange(month.airTempMinC(), month.airTempMaxC()));
        double low =
                month.airTempMinC() + share * (came.airTempMinC() - month.airTempMinC()) + error;
        double high =
                month.airTempMaxC() + share * (came.airTempMaxC() - month.airTempMaxC()) + error;
        return new DailyWeather(
                day,
                Optional.of(new TempRange(low, Math.max(low + 1, high))),
                OptionalDouble.empty(),
                DailyWeather.Sky.UNKNOWN);
    }

    private Optional<TempRange> known(LocalDate day) {
        StationYear year = truth.year();
        int index = (int) (day.toEpochDay() - year.days().get(0).weather().day().toEpochDay());
        return index < 0 || index >= year.days().size()
                ? Optional.empty()
                : year.days().get(index).weather().temps();
    }

    /** Temperatures by month; rain of the whole cut, for one season has too few days by month. */
    private static Climate usual(StationYear year) {
        List<DailyWeather> days = year.days().stream().map(d -> d.weather()).toList();
        RainClimate rain = RainClimate.of(days.stream()
                .filter(d -> d.rainMm().isPresent())
                .mapToDouble(d -> d.rainMm().getAsDouble())
                .toArray());
        List<MonthlyClimate> months = new ArrayList<>();
        for (Month month : Month.values()) {
            months.add(new MonthlyClimate(
                    month,
                    rain.wetChance(),
                    Math.min(100, rain.meanWetMm()),
                    mean(days, month, true),
                    mean(days, month, false)));
        }
        return new Climate("of the station's own days", ELEVATION_M, months);
    }

    private static double mean(List<DailyWeather> days, Month month, boolean low) {
        return days.stream()
                .filter(d -> d.temps().isPresent() && d.day().getMonth() == month)
                .map(d -> d.temps().orElseThrow())
                .mapToDouble(t -> low ? t.airTempMinC() : t.airTempMaxC())
                .average()
                .orElse(low ? 10 : 20);
    }
}
