package rainward.replay.truth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rainward.farm.GeoPoint;
import rainward.farm.Property;
import rainward.intake.ClimateTable;
import rainward.intake.TableFolder;
import rainward.soil.verify.StationDay;
import rainward.soil.verify.StationYear;
import rainward.weather.climate.Climate;
import rainward.weather.climate.DailyWeather;
import rainward.weather.source.ForecastSeries;

/** Drawn forecasts, held against the skill that they are drawn for. */
class DrawnForecastsTest {

    private static final ZoneId ZONE = ZoneId.of("America/Detroit");
    private static final GeoPoint YARD = new GeoPoint(42.15, -84.51);
    private static final Property FARM = new Property("Mill Pond", YARD);
    private static final Climate CLIMATE =
            new ClimateTable(TableFolder.onClassPath()).of("southern michigan");

    /** Chance, amount and outcome by lead of half a day. */
    private static final List<List<Told>> TOLD = new ArrayList<>();

    private record Told(double chance, double expectedMm, double cameMm) {
        boolean wet() {
            return cameMm >= 0.254;
        }
    }

    @BeforeAll
    static void drawFourSummers() {
        for (int lead = 0; lead < 15; lead++) {
            TOLD.add(new ArrayList<>());
        }
        for (int seed = 1; seed <= 4; seed++) {
            StationYear year = InventedStation.of(CLIMATE, YARD, 2020, seed);
            TrueWeather truth = TrueWeather.of(summer(year), List.of(FARM), seed);
            DrawnForecasts forecasts = new DrawnForecasts(truth, ZONE, seed);
            for (int d = 0; d < 120; d++) {
                keep(truth, forecasts.of(FARM, LocalDate.of(2020, 5, 10).plusDays(d)));
            }
        }
    }

    private static StationYear summer(StationYear year) {
        List<StationDay> days = year.days().stream()
                .filter(d -> d.weather().day().getMonthValue() >= 5
                        && d.weather().day().getMonthValue() <= 9)
                .toList();
        return new StationYear(year.station(), year.place(), days);
    }

    private static void keep(TrueWeather truth, ForecastSeries forecast) {
        for (int lead = 0; lead < 15; lead++) {
            Instant from = forecast.rain().amounts().get(lead).window().from();
            TOLD.get(lead)
                    .add(new Told(
                            forecast.rain().probabilities().get(lead).probability(),
                            forecast.rain().amounts().get(lead).amountMm(),
                            truth.rainMm(FARM.name(), from, 12)));
        }
    }

    private static double skill(List<Told> told) {
        double usual = told.stream().mapToDouble(t -> t.wet() ? 1 : 0).average().orElseThrow();
        double brier = told.stream()
                .mapToDouble(t -> Math.pow(t.chance() - (t.wet() ? 1 : 0), 2))
                .average()
                .orElseThrow();
        return 1 - brier / (usual * (1 - usual));
    }

    /** Brier skill by lead as {@link ForecastSkill} has it from memory; half-day leads in pairs. */
    @Test
    void chancesAreAsSkilfulAsPublicOnesAtEveryLead() {
        for (int day = 0; day < 7; day++) {
            List<Told> both = new ArrayList<>(TOLD.get(2 * day));
            both.addAll(TOLD.get(2 * day + 1));
            assertThat(skill(both))
                    .as("day " + (day + 1))
                    .isCloseTo(ForecastSkill.brierSkill(24 * day + 12), within(0.07));
        }
    }

    @Test
    void chancesAreReliable() {
        var byClass = TOLD.stream().flatMap(List::stream).collect(Collectors.groupingBy(t ->
                (int) Math.min(4, 5 * t.chance())));
        byClass.values().stream().filter(all -> all.size() > 200).forEach(all -> {
            double told = all.stream().mapToDouble(Told::chance).average().orElseThrow();
            double came = all.stream().filter(Told::wet).count() / (double) all.size();
            assertThat(came).isCloseTo(told, within(0.08));
        });
    }

    @Test
    void amountsAddUpToWhatFalls() {
        double told = TOLD.stream()
                .flatMap(List::stream)
                .mapToDouble(Told::expectedMm)
                .average()
                .orElseThrow();
        double came = TOLD.stream()
                .flatMap(List::stream)
                .mapToDouble(Told::cameMm)
                .average()
                .orElseThrow();
        assertThat(told).isCloseTo(came, within(0.15 * came));
    }

    /** A storm that nobody can know of yet moves nothing that is said of the days before it. */
    @Test
    void nothingIsSeenOfWhatLiesBeyondTheForecast() {
        StationYear year = summer(InventedStation.of(CLIMATE, YARD, 2020, 5));
        LocalDate issued = LocalDate.of(2020, 7, 1);
        List<StationDay> stormy = year.days().stream()
                .map(d -> d.weather().day().equals(issued.plusDays(12)) ? storm(d) : d)
                .toList();

        ForecastSeries calm = drawn(year, issued);
        ForecastSeries before = drawn(new StationYear("x", YARD, stormy), issued);

        for (int lead = 0; lead < 15; lead++) {
            assertThat(before.rain().probabilities().get(lead).probability())
                    .isCloseTo(calm.rain().probabilities().get(lead).probability(), within(0.02));
        }
        ForecastSeries close = drawn(new StationYear("x", YARD, stormy), issued.plusDays(12));
        assertThat(wettest(close)).isGreaterThan(wettest(drawn(year, issued.plusDays(12))));
    }

    private static double wettest(ForecastSeries forecast) {
        return forecast.rain().amounts().stream()
                .limit(2)
                .mapToDouble(a -> a.amountMm())
                .sum();
    }

    private static StationDay storm(StationDay day) {
        DailyWeather was = day.weather();
        return new StationDay(
                new DailyWeather(
                        was.day(), was.temps(), java.util.OptionalDouble.of(60), was.sky()),
                day.moisture5Fraction(),
                day.soilTemp5C());
    }

    private static ForecastSeries drawn(StationYear year, LocalDate day) {
        TrueWeather truth = TrueWeather.of(year, List.of(FARM), 3);
        return new DrawnForecasts(truth, ZONE, 3).of(FARM, day);
    }

    @Test
    void yardHasTheStationsRainAndFarPropertiesTheirOwn() {
        StationYear year = summer(InventedStation.of(CLIMATE, YARD, 2020, 6));
        Property far = new Property("Far", new GeoPoint(43.15, -84.51));
        TrueWeather truth = TrueWeather.of(year, List.of(FARM, far), 4);
        Instant start = truth.at("Far").air().start();
        int alike = 0;
        double farMm = 0;
        double hereMm = 0;
        for (int d = 0; d < year.days().size(); d++) {
            Instant day = start.plus(Duration.ofDays(d));
            double here = truth.rainMm(FARM.name(), day, 24);
            assertThat(here)
                    .isCloseTo(year.days().get(d).weather().rainMm().getAsDouble(), within(0.01));
            hereMm += here;
            farMm += truth.rainMm("Far", day, 24);
            alike += here > 0 == truth.rainMm("Far", day, 24) > 0 ? 1 : 0;
        }
        assertThat(alike).isLessThan(year.days().size() - 20);
        assertThat(farMm).isBetween(0.5 * hereMm, 2 * hereMm);
    }
}
