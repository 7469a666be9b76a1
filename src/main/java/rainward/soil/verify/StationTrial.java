package rainward.soil.verify;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import rainward.farm.SoilTexture;
import rainward.soil.FieldSoil;
import rainward.soil.SoilPast;
import rainward.soil.SurfaceCondition;
import rainward.soil.column.SoilColumn;
import rainward.soil.property.SaxtonRawls;
import rainward.weather.past.ObservedWeather;

/** One station: what its sensors saw and what column and bucket made of its weather, day by day. */
final class StationTrial {

    /** One texture for all stations: loam, the middle of the classes of Saxton and Rawls. */
    static final SoilTexture TEXTURE = new SoilTexture(0.40, 0.20, 2.5);

    private static final double SENSOR_CM = 5;
    private static final int WEEK = 7;

    private final StationYear year;
    private final double[] moisture;
    private final double[] warmth;
    private final double[] column;
    private final double[] columnWarmth;
    private final double[] bucket;

    StationTrial(StationYear year) {
        this.year = year;
        this.moisture = series(day -> day.moisture5Fraction().orElse(Double.NaN));
        this.warmth = series(day -> day.soilTemp5C().orElse(Double.NaN));
        ObservedWeather weather = StationWeather.of(year);
        SoilColumn grass =
                new SoilColumn(new FieldSoil(TEXTURE, 0.02, SurfaceCondition.SHORT_GRASS));
        SoilPast past = grass.follow(grass.start(weather), weather, SENSOR_CM);
        this.column = dayMeans(past.waterFraction());
        this.columnWarmth = dayMeans(past.tempC());
        this.bucket = bucketOf(weather);
    }

    private double[] series(ToDoubleFunction<StationDay> what) {
        return year.days().stream()
                .mapToDouble(
                        day -> inSeason(day.weather().day()) ? what.applyAsDouble(day) : Double.NaN)
                .toArray();
    }

    /** May to September. */
    private static boolean inSeason(LocalDate day) {
        return day.getMonthValue() >= 5 && day.getMonthValue() <= 9;
    }

    private static double[] dayMeans(double[] hours) {
        double[] days = new double[hours.length / 24];
        for (int h = 0; h < 24 * days.length; h++) {
            days[h / 24] += hours[h] / 24;
        }
        return days;
    }

    private static double[] bucketOf(ObservedWeather weather) {
        SingleBucket bucket = new SingleBucket(SaxtonRawls.of(TEXTURE));
        double[] rain = dayMeans(weather.rainMm());
        double[] reference = dayMeans(weather.sun().referenceEvapotranspirationMm());
        double[] water = new double[rain.length];
        for (int d = 0; d < water.length; d++) {
            water[d] = bucket.day(24 * rain[d], 24 * reference[d]);
        }
        return water;
    }

    int sensorDays() {
        return (int) Arrays.stream(moisture).filter(m -> !Double.isNaN(m)).count();
    }

    SoilReport.Figures figures() {
        Agreement water = Agreement.of(column, moisture);
        Agreement plain = Agreement.of(bucket, moisture);
        return new SoilReport.Figures(
                year.station(),
                water.count(),
                water.correlation(),
                water.unbiasedRmse(),
                water.bias(),
                plain.correlation(),
                plain.unbiasedRmse(),
                Agreement.of(carried(WEEK, 0), moisture).unbiasedRmse(),
                Agreement.of(columnWarmth, warmth).rmse(),
                new SoilReport.Told(
                        Agreement.of(fromTheStart(), moisture).unbiasedRmse(),
                        Agreement.of(carried(1, 0), moisture).unbiasedRmse(),
                        Agreement.of(carried(1, 1), moisture).unbiasedRmse(),
                        Agreement.of(carried(WEEK, 1), moisture).unbiasedRmse()));
    }

    /** The first value that the sensor tells, for all days. */
    private double[] fromTheStart() {
        double[] values = new double[moisture.length];
        Arrays.fill(
                values,
                Arrays.stream(moisture)
                        .filter(m -> !Double.isNaN(m))
                        .findFirst()
                        .orElse(0));
        return values;
    }

    /** The sensor's value some days ago, with a share of the column's change since. */
    private double[] carried(int days, double change) {
        double[] values = new double[moisture.length];
        Arrays.fill(values, Double.NaN);
        for (int d = days; d < values.length; d++) {
            values[d] = moisture[d - days] + change * (column[d] - column[d - days]);
        }
        return values;
    }

    /** Rains of 10 mm or more after four days of less than 1 mm each, with the sensor awake. */
    List<Wetted> wettings() {
        return java.util.stream.IntStream.range(4, moisture.length - 1)
                .filter(this::rainAfterDrySpell)
                .filter(d -> !Double.isNaN(moisture[d - 1] + moisture[d] + moisture[d + 1]))
                .mapToObj(d -> new Wetted(rise(moisture, d), rise(column, d)))
                .toList();
    }

    private boolean rainAfterDrySpell(int d) {
        boolean dry = rainMm(d) >= 10;
        for (int before = d - 4; before < d; before++) {
            dry &= rainMm(before) < 1;
        }
        return dry;
    }

    /** NaN where not measured, so that no comparison with it holds. */
    private double rainMm(int d) {
        return year.days().get(d).weather().rainMm().orElse(Double.NaN);
    }

    private static double rise(double[] water, int d) {
        return Math.max(water[d], water[d + 1]) - water[d - 1];
    }

    /**
     * Rise of the water content at 5 cm from the day before a rain to the day after.
     *
     * @param measuredFraction by the sensor [m3/m3]
     * @param modelFraction by the column [m3/m3]
     */
    record Wetted(double measuredFraction, double modelFraction) {}
}
