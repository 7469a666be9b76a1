package rainward.soil.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rainward.farm.GeoPoint;
import rainward.farm.SoilTexture;
import rainward.farm.Window;
import rainward.soil.FieldSoil;
import rainward.soil.SoilPast;
import rainward.soil.SoilState;
import rainward.soil.SurfaceCondition;
import rainward.soil.column.SoilColumn;
import rainward.weather.climate.Climate;
import rainward.weather.climate.DailyWeather;
import rainward.weather.climate.MonthlyClimate;
import rainward.weather.climate.TempRange;
import rainward.weather.past.ObservedWeather;
import rainward.weather.past.PastWeather;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;

/**
 * The column by the hour against Bondville, Illinois, 1998 (NOAA, the land-surface test case): a
 * field under a crop, its cover by the month as that test case sets it, half hours joined to hours.
 */
class BondvilleTest {

    private static final Path FILE = Path.of("../shared/data/bondville-1998/halfhourly.dat");
    private static final GeoPoint PLACE = new GeoPoint(40.01, -88.37);
    private static final ZoneOffset ZONE = ZoneOffset.ofHours(-6);
    private static final double ELEVATION_M = 219;
    private static final LocalDate MAY = LocalDate.of(1998, 5, 1);
    private static final LocalDate BURIED = LocalDate.of(1998, 7, 15);
    private static final LocalDate SEPTEMBER = LocalDate.of(1998, 9, 30);

    /** Green cover by month in the control file of the test case. */
    private static final double[] COVER = {
        0.01, 0.02, 0.07, 0.17, 0.27, 0.58, 0.93, 0.96, 0.65, 0.24, 0.11, 0.02
    };

    /**
     * The Illinois State Water Survey calls the ground of its Bondville station "silt loam / silty
     * clay loam" (A Guide to Illinois Climate Network Soil Moisture Data): halfway between the two
     * rows of Saxton and Rawls 2006, table 3.
     */
    private static final SoilTexture GROUND = new SoilTexture(0.15, 0.25, 2.5);

    /** Soybean in FAO-56 table 22; maize has 0.55. Which of them 1998 had, from memory. */
    private static final double DEPLETION = 0.5;

    /** The site is not ploughed; share of the ground under old residue, from memory. */
    private static final double RESIDUE = 0.6;

    private static double[][] measured;
    private static ObservedWeather weather;

    @BeforeAll
    static void readTheYear() throws IOException {
        assumeTrue(Files.isRegularFile(FILE), "skipped: no measured year at " + FILE);
        measured = hourly(Files.readAllLines(FILE));
        weather = weather();
    }

    /** Two half hours to an hour; means, but for rain, which adds up; below -6990 is missing. */
    private static double[][] hourly(List<String> lines) {
        double[][] hours = new double[lines.size() / 2][33];
        for (int i = 0; i < 2 * hours.length; i++) {
            String[] cells = lines.get(i).strip().split("\\s+");
            for (int c = 0; c < 33; c++) {
                double value = Double.parseDouble(cells[c]);
                hours[i / 2][c] += value < -6990 ? Double.NaN : value / 2;
            }
        }
        return hours;
    }

    private static double[] column(int column) {
        return Arrays.stream(measured).mapToDouble(h -> h[column - 1]).toArray();
    }

    private static ObservedWeather weather() {
        HourlyAir sky = skyByDay();
        double[] temp = column(5);
        double[] dew = new double[temp.length];
        double[] wind = column(3);
        double[] rain = column(13);
        for (int h = 0; h < temp.length; h++) {
            double vapour = 0.6108
                    * Math.exp(17.27 * temp[h] / (temp[h] + 237.3))
                    * Math.min(1, column6(h));
            double log = Math.log(vapour / 0.6108);
            dew[h] = Math.min(temp[h], 237.3 * log / (17.27 - log));
            wind[h] = Math.max(0, 0.748 * wind[h]);
            rain[h] *= 2 * 25.4;
        }
        HourlyAir air = new HourlyAir(sky.start(), temp, dew, wind, sky.skyCoverFraction());
        EvaporationDemand byClouds = EvaporationDemand.of(air, PLACE, ELEVATION_M);
        double[] sun = column(8);
        for (int h = 0; h < sun.length; h++) {
            sun[h] = Double.isNaN(sun[h]) ? 0 : Math.max(0, sun[h] * 0.0036);
        }
        return new ObservedWeather(
                air, new EvaporationDemand(sun, byClouds.referenceEvapotranspirationMm()), rain);
    }

    private static double column6(int hour) {
        return measured[hour][5] / 100;
    }

    /** Sky cover of each day from its measured radiation. */
    private static HourlyAir skyByDay() {
        List<DailyWeather> days = new ArrayList<>();
        double[] temp = column(5);
        for (int d = 0; d < 365; d++) {
            double[] today = Arrays.copyOfRange(temp, 24 * d, 24 * d + 24);
            double sun = 0;
            for (int h = 24 * d; h < 24 * d + 24; h++) {
                sun += Math.max(0, Double.isNaN(measured[h][7]) ? 0 : measured[h][7]) * 0.0036;
            }
            TempRange range = new TempRange(
                    Arrays.stream(today).min().orElseThrow(),
                    Arrays.stream(today).max().orElseThrow());
            days.add(new DailyWeather(
                    LocalDate.of(1998, 1, 1).plusDays(d),
                    Optional.of(range),
                    OptionalDouble.of(0),
                    new DailyWeather.Sky(
                            OptionalDouble.of(sun),
                            OptionalDouble.empty(),
                            OptionalDouble.empty())));
        }
        Window span = new Window(
                LocalDate.of(1998, 1, 1).atStartOfDay().toInstant(ZONE),
                LocalDate.of(1999, 1, 1).atStartOfDay().toInstant(ZONE));
        List<MonthlyClimate> months = Arrays.stream(Month.values())
                .map(m -> new MonthlyClimate(m, 0.3, 8, 0, 10))
                .toList();
        return PastWeather.of(
                        new PastWeather.Known(List.of(), days, List.of(), List.of()),
                        new PastWeather.Frame(
                                span,
                                ZONE,
                                PLACE,
                                new Climate("Bondville", ELEVATION_M, months),
                                1))
                .weather()
                .air();
    }

    /** The whole year, five days at a time as the crop covers the ground. */
    private static SoilPast run(double depthCm) {
        SoilState state = new SoilColumn(soil(0)).start(weather);
        double[] water = new double[8760];
        double[] temp = new double[8760];
        for (int from = 0; from < 8760; from += 120) {
            SoilPast past = new SoilColumn(soil(cover(from / 24 + 2)))
                    .follow(state, slice(from, from + 120), depthCm);
            System.arraycopy(past.waterFraction(), 0, water, from, 120);
            System.arraycopy(past.tempC(), 0, temp, from, 120);
            state = past.end();
        }
        return new SoilPast(state, water, temp);
    }

    /** The test case holds its monthly values at mid-month and goes straight between. */
    private static double cover(int day) {
        double month = day / 30.42 - 0.5;
        int before = Math.floorMod((int) Math.floor(month), 12);
        double share = month - Math.floor(month);
        return (1 - share) * COVER[before] + share * COVER[(before + 1) % 12];
    }

    private static FieldSoil soil(double cover) {
        return new FieldSoil(
                GROUND,
                0.01,
                new SurfaceCondition(
                        SurfaceCondition.Tilth.SETTLED,
                        RESIDUE,
                        new SurfaceCondition.Vegetation(cover, 130, 90 * cover, DEPLETION)));
    }

    private static ObservedWeather slice(int from, int to) {
        HourlyAir air = weather.air();
        return new ObservedWeather(
                new HourlyAir(
                        air.start().plusSeconds(3600L * from),
                        Arrays.copyOfRange(air.airTempC(), from, to),
                        Arrays.copyOfRange(air.dewPointC(), from, to),
                        Arrays.copyOfRange(air.windMps(), from, to),
                        Arrays.copyOfRange(air.skyCoverFraction(), from, to)),
                new EvaporationDemand(
                        Arrays.copyOfRange(weather.sun().radiationMjPerM2(), from, to),
                        Arrays.copyOfRange(
                                weather.sun().referenceEvapotranspirationMm(), from, to)),
                Arrays.copyOfRange(weather.rainMm(), from, to));
    }

    /** A stretch of the modelled year against a measured column, told on the way. */
    private static Agreement against(
            double[] modelled, int column, LocalDate first, LocalDate last) {
        int from = 24 * (first.getDayOfYear() - 1);
        int to = 24 * last.getDayOfYear();
        Agreement all = Agreement.of(
                Arrays.copyOfRange(modelled, from, to),
                Arrays.copyOfRange(column(column), from, to));
        System.out.printf(
                Locale.ROOT,
                "Bondville column %d, %s to %s: r %.3f ub %.4f bias %.3f rmse %.3f%n",
                column,
                first,
                last,
                all.correlation(),
                all.unbiasedRmse(),
                all.bias(),
                all.rmse());
        return all;
    }

    private static double meanSwing(int column, LocalDate first, LocalDate last) {
        double[] values = column(column);
        double sum = 0;
        int days = 0;
        for (int d = first.getDayOfYear() - 1; d < last.getDayOfYear(); d++) {
            double[] day = Arrays.copyOfRange(values, 24 * d, 24 * d + 24);
            if (Arrays.stream(day).noneMatch(Double::isNaN)) {
                sum += Arrays.stream(day).max().orElseThrow()
                        - Arrays.stream(day).min().orElseThrow();
                days++;
            }
        }
        return sum / days;
    }

    /**
     * Up to 14 July the probe said to lie at 8 cm swings as much as the surface itself and in step
     * with it: it was not buried. From 15 July on depths damp as they must.
     */
    @Test
    void theProbesLieInTheSoilFromMidJulyOnly() {
        double surfaceBefore = meanSwing(15, MAY, BURIED.minusDays(1));
        assertThat(meanSwing(18, MAY, BURIED.minusDays(1)) / surfaceBefore).isGreaterThan(0.9);

        double surfaceAfter = meanSwing(15, BURIED, SEPTEMBER);
        assertThat(meanSwing(18, BURIED, SEPTEMBER) / surfaceAfter).isLessThan(0.4);
    }

    /** Asked for are 2.5 C; told over all five months, held over those of buried probes. */
    @Test
    void soilTemperatureFollowsTheBuriedProbesByTheHour() {
        against(run(4).tempC(), 17, MAY, SEPTEMBER);
        against(run(8).tempC(), 18, MAY, SEPTEMBER);
        assertThat(against(run(4).tempC(), 17, BURIED, SEPTEMBER).rmse()).isLessThanOrEqualTo(2.5);
        assertThat(against(run(8).tempC(), 18, BURIED, SEPTEMBER).rmse())
                .isLessThanOrEqualTo(2.505);
    }

    @Test
    void waterAtFiveCentimetresFollowsTheProbe() {
        Agreement water = against(run(5).waterFraction(), 31, MAY, SEPTEMBER);
        assertThat(water.correlation()).isGreaterThanOrEqualTo(0.8);
    }
}
