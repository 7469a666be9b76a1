package rainward.weather.past;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.farm.Window;
import rainward.weather.climate.DailyWeather;
import rainward.weather.climate.DayCourse;
import rainward.weather.climate.TempRange;
import rainward.weather.past.PastWeather.Frame;
import rainward.weather.past.PastWeather.Known;
import rainward.weather.past.PastWeather.RainDay;
import rainward.weather.rain.RainAmount;
import rainward.weather.rain.RainObservation;
import rainward.weather.rain.RainOrigin;
import rainward.weather.sky.EvaporationDemand;
import rainward.weather.sky.HourlyAir;
import rainward.weather.trace.Skies;

/** The past is put together by rank, and says what each day rests on. */
class PastWeatherTest {

    static final ZoneId ZONE = ZoneId.of("America/Detroit");
    static final LocalDate DAY = LocalDate.of(2026, 7, 10);
    static final Instant EARLY = Instant.parse("2026-07-11T06:00:00Z");
    static final Instant LATE = Instant.parse("2026-07-12T06:00:00Z");
    static final Known NOTHING = new Known(List.of(), List.of(), List.of(), List.of());

    static Window day(LocalDate day, int days) {
        return new Window(
                day.atStartOfDay(ZONE).toInstant(),
                day.plusDays(days).atStartOfDay(ZONE).toInstant());
    }

    static Window hour(LocalDate day, int hour) {
        Instant from = day.atStartOfDay(ZONE).toInstant().plus(Duration.ofHours(hour));
        return new Window(from, from.plus(Duration.ofHours(1)));
    }

    static Frame frame(LocalDate first, int days) {
        return new Frame(day(first, days), ZONE, Skies.FARM, Skies.EVEN_YEAR, 11);
    }

    static Known rain(RainObservation... all) {
        return new Known(List.of(all), List.of(), List.of(), List.of());
    }

    static RainObservation gauge(double mm, Instant entered) {
        return new RainObservation(day(DAY, 1), mm, RainOrigin.GAUGE_SOURCE, entered);
    }

    static RainObservation daily(double mm) {
        return new RainObservation(day(DAY, 1), mm, "acis", EARLY);
    }

    static RainObservation hourly(int hour, double mm) {
        return new RainObservation(hour(DAY, hour), mm, "stage4", EARLY);
    }

    static RainDay only(Known known) {
        List<RainDay> days = PastWeather.of(known, frame(DAY, 1)).days();
        assertThat(days).hasSize(1);
        return days.get(0);
    }

    @Nested
    class Ranks {

        @Test
        void theGaugeOutranksEveryAnalysis() {
            RainDay day = only(rain(daily(9), hourly(15, 4), gauge(0.5, EARLY)));
            assertThat(day.origin()).isEqualTo(RainOrigin.GAUGE);
            assertThat(day.rainMm()).isCloseTo(0.5, within(1e-9));
        }

        @Test
        void aGaugeThatFoundNothingMakesADryDay() {
            assertThat(only(rain(daily(9), gauge(0, EARLY))).rainMm()).isZero();
        }

        @Test
        void theGaugesTotalFallsInTheHoursOfTheAnalysis() {
            double[] mm = PastWeather.of(
                            rain(hourly(15, 3), hourly(16, 1), gauge(20, EARLY)), frame(DAY, 1))
                    .weather()
                    .rainMm();
            assertThat(mm[15]).isCloseTo(15, within(1e-9));
            assertThat(mm[16]).isCloseTo(5, within(1e-9));
        }

        @Test
        void theLaterReadingOfOneDayHolds() {
            assertThat(only(rain(gauge(3, EARLY), gauge(7, LATE))).rainMm())
                    .isCloseTo(7, within(1e-9));
        }

        @Test
        void hoursNobodySawGetTheRestOfTheDaysTotal() {
            double[] mm = PastWeather.of(rain(daily(10), hourly(15, 4)), frame(DAY, 1))
                    .weather()
                    .rainMm();
            assertThat(mm[15]).isCloseTo(4, within(1e-9));
            assertThat(Arrays.stream(mm).sum()).isCloseTo(10, within(1e-9));
        }

        @Test
        void hoursBeatADaysTotalThatIsLess() {
            assertThat(only(rain(daily(3), hourly(15, 4))).rainMm()).isCloseTo(4, within(1e-9));
        }

        @Test
        void whatHadBeenForecastFillsADayNobodySaw() {
            Known known = new Known(
                    List.of(), List.of(), List.of(), List.of(new RainAmount(day(DAY, 1), 6)));
            PastWeather past = PastWeather.of(known, frame(DAY, 1));
            assertThat(past.days().get(0).origin()).isEqualTo(RainOrigin.FORECAST);
            assertThat(past.warnings())
                    .containsExactly(
                            "2026-07-10: nobody observed the rain; what had been forecast is used");
        }
    }

    /** Who told of which hours, and when. */
    @Nested
    class Tellers {

        static final RainObservation KIM = new RainObservation(
                day(DAY, 1), 12.7, RainOrigin.GAUGE_SOURCE, EARLY, "Kim Ostrander");

        @Test
        void aGaugedDayNamesWhoReadItAndWhen() {
            assertThat(only(rain(hourly(15, 4), KIM)).shares()).singleElement().satisfies(share -> {
                assertThat(share.from())
                        .isEqualTo(new RainShare.From(RainOrigin.GAUGE, "Kim Ostrander"));
                assertThat(share.toldAt()).contains(EARLY);
                assertThat(share.hours()).isEqualTo(24);
                assertThat(share.rainMm()).isCloseTo(12.7, within(1e-9));
            });
        }

        @Test
        void hoursAndADaysTotalThatOverlapAreBothNamedWithTheirHours() {
            List<RainShare> shares = only(rain(daily(10), hourly(15, 4))).shares();
            assertThat(shares).hasSize(2);
            assertThat(shares.get(0).from().by()).isEqualTo("acis");
            assertThat(shares.get(0).hours()).isEqualTo(23);
            assertThat(shares.get(0).rainMm()).isCloseTo(6, within(1e-9));
            assertThat(shares.get(1).from().origin()).isEqualTo(RainOrigin.HOURLY_ANALYSIS);
            assertThat(shares.get(1).rainMm()).isCloseTo(4, within(1e-9));
        }

        /** The hourly analysis is adjusted up to nine days later, so it is fetched again. */
        @Test
        void anHourFetchedAgainHoldsAsAdjustedWithItsLaterTime() {
            Instant nineDaysOn = EARLY.plus(Duration.ofDays(9));
            RainDay day = only(rain(
                    hourly(15, 4),
                    new RainObservation(hour(DAY, 15), 6.5, "stage4", nineDaysOn),
                    daily(9)));
            RainShare adjusted = day.shares().get(1);
            assertThat(adjusted.rainMm()).isCloseTo(6.5, within(1e-9));
            assertThat(adjusted.toldAt()).contains(nineDaysOn);
            assertThat(day.rainMm()).isCloseTo(9, within(1e-9));
        }

        @Test
        void anHourAdjustedAfterTheGaugeWasReadMovesTheCourseAndNotTheTotal() {
            Instant nineDaysOn = EARLY.plus(Duration.ofDays(9));
            PastWeather past = PastWeather.of(
                    rain(
                            KIM,
                            hourly(15, 4),
                            new RainObservation(hour(DAY, 15), 0, "stage4", nineDaysOn),
                            hourly(20, 1)),
                    frame(DAY, 1));
            assertThat(past.weather().rainMm()[20]).isCloseTo(12.7, within(1e-9));
            assertThat(past.days().get(0).rainMm()).isCloseTo(12.7, within(1e-9));
        }

        @Test
        void aStationFillsHoursThatNoAnalysisHasAndNoOthers() {
            var reports = List.of(
                    new RainObservation(hour(DAY, 3), 2, RainOrigin.STATION_SOURCE, EARLY),
                    new RainObservation(hour(DAY, 15), 9, RainOrigin.STATION_SOURCE, EARLY),
                    hourly(15, 4));
            RainDay day = only(new Known(
                    reports, List.of(), List.of(), List.of(new RainAmount(day(DAY, 1), 12))));
            assertThat(day.shares().stream().map(share -> share.from().origin()))
                    .containsExactly(
                            RainOrigin.FORECAST, RainOrigin.HOURLY_ANALYSIS, RainOrigin.STATION);
            assertThat(day.rainMm()).isCloseTo(12, within(1e-9));
        }

        @Test
        void aDayNobodySawNamesTheClimateOfTheRegion() {
            RainShare share = only(NOTHING).shares().get(0);
            assertThat(share.from())
                    .isEqualTo(new RainShare.From(RainOrigin.CLIMATE, Skies.EVEN_YEAR.region()));
            assertThat(share.toldAt()).isEmpty();
        }

        @Test
        void onlyHoursWhoseRainWasSeenInThemAreTimed() {
            PastWeather byDay = PastWeather.of(rain(daily(10), hourly(15, 4)), frame(DAY, 1));
            assertThat(byDay.timedHours().stream()).containsExactly(15);
            PastWeather byGauge = PastWeather.of(rain(KIM, hourly(15, 4)), frame(DAY, 1));
            assertThat(byGauge.timedHours().isEmpty())
                    .as("one hour was watched")
                    .isTrue();
            assertThat(PastWeather.of(NOTHING, frame(DAY, 1)).timedHours().isEmpty())
                    .isTrue();
        }

        @ParameterizedTest
        @ValueSource(doubles = {0, 4})
        void aGaugedDayIsTimedByAnAnalysisOfAllItsHoursWetOrDry(double mm) {
            RainObservation[] all = IntStream.range(0, 25)
                    .mapToObj(h -> h == 24 ? KIM : hourly(h, h == 15 ? mm : 0))
                    .toArray(RainObservation[]::new);
            PastWeather past = PastWeather.of(rain(all), frame(DAY, 1));
            assertThat(past.timedHours().cardinality()).isEqualTo(mm > 0 ? 24 : 0);
        }

        /** Else only dry days were counted where a gauge alone tells of the rain. */
        @ParameterizedTest
        @ValueSource(doubles = {0, 10})
        void aDayThatOnlyItsTotalTellsOfIsNotTimedWetOrDry(double mm) {
            assertThat(PastWeather.of(rain(daily(mm)), frame(DAY, 1))
                            .timedHours()
                            .isEmpty())
                    .isTrue();
        }
    }

    @Nested
    class Gaps {

        @Test
        void theMonthsUsualRainFallsWhereNothingIsKnown() {
            PastWeather past = PastWeather.of(NOTHING, frame(DAY, 20));
            // 0.3 wet days of 8 mm: six wet days in twenty.
            assertThat(past.days().stream().mapToDouble(RainDay::rainMm).sum())
                    .isCloseTo(48, within(1e-6));
            assertThat(past.days()).allMatch(d -> d.origin() == RainOrigin.CLIMATE);
            assertThat(past.warnings())
                    .containsExactly(
                            "2026-07-10 to 2026-07-29: nobody observed the rain; the month's usual"
                                    + " rain is used");
        }

        @Test
        void anObservedDayBetweenTwoGapsSplitsTheWarning() {
            RainObservation middle = new RainObservation(day(DAY.plusDays(2), 1), 1, "acis", EARLY);
            assertThat(PastWeather.of(rain(middle), frame(DAY, 5)).warnings()).hasSize(2);
        }
    }

    @Nested
    class Totals {

        @ParameterizedTest(name = "{0} has {1} hours")
        @CsvSource({"2026-03-08, 23", "2026-03-09, 24", "2026-11-01, 25"})
        void aGaugedDayKeepsItsTotalHoweverLongItIs(LocalDate day, int hours) {
            var reading = new RainObservation(day(day, 1), 12.7, RainOrigin.GAUGE_SOURCE, EARLY);
            PastWeather past = PastWeather.of(rain(reading), frame(day, 1));
            assertThat(past.weather().rainMm()).hasSize(hours);
            assertThat(past.days().get(0).rainMm()).isCloseTo(12.7, within(1e-9));
        }

        @Test
        void aReadingFromSevenToSevenIsSplitOverTwoFarmDaysWithItsSum() {
            Instant seven = hour(DAY, 7).from();
            var reading = new RainObservation(
                    new Window(seven, seven.plus(Duration.ofHours(24))),
                    18,
                    RainOrigin.GAUGE_SOURCE,
                    LATE);
            PastWeather past = PastWeather.of(rain(reading), frame(DAY, 2));
            double inside = past.weather().rainMm().length;
            assertThat(inside).isEqualTo(48);
            double[] mm = past.weather().rainMm();
            assertThat(Arrays.stream(mm, 7, 31).sum()).isCloseTo(18, within(1e-9));
        }

        @Test
        void anyMixOfObservationsGivesRainOfZeroOrMoreAndKeepsEveryGaugedDay() {
            var random = new SplittableRandom(20260801);
            for (int round = 0; round < 200; round++) {
                List<RainObservation> all = new ArrayList<>();
                for (int d = 0; d < 6; d++) {
                    LocalDate date = DAY.plusDays(d);
                    IntStream.range(0, random.nextInt(24))
                            .forEach(h -> all.add(new RainObservation(
                                    hour(date, h),
                                    random.nextDouble() < 0.8 ? 0 : random.nextDouble(9),
                                    "stage4",
                                    EARLY)));
                    all.add(new RainObservation(
                            day(date, 1), random.nextDouble(30), "acis", EARLY));
                }
                double gauged = random.nextDouble(60);
                all.add(new RainObservation(
                        day(DAY.plusDays(3), 1), gauged, RainOrigin.GAUGE_SOURCE, LATE));
                PastWeather past = PastWeather.of(
                        new Known(all, List.of(), List.of(), List.of()), frame(DAY, 6));
                assertThat(Arrays.stream(past.weather().rainMm()).min().orElseThrow())
                        .isNotNegative();
                assertThat(past.days().get(3).rainMm()).isCloseTo(gauged, within(1e-9));
            }
        }

        @Test
        void aDayOfATotalOnlyRainsInOneStormOfAtMostSixHours() {
            double[] mm =
                    PastWeather.of(rain(daily(24)), frame(DAY, 1)).weather().rainMm();
            int[] wet = IntStream.range(0, 24).filter(h -> mm[h] > 0).toArray();
            assertThat(wet.length).isBetween(1, 6);
            assertThat(wet[wet.length - 1] - wet[0]).isEqualTo(wet.length - 1);
        }

        @Test
        void theSameSeedPutsTheStormInTheSameHours() {
            assertThat(PastWeather.of(rain(daily(24)), frame(DAY, 1)).weather().rainMm())
                    .isEqualTo(PastWeather.of(rain(daily(24)), frame(DAY, 1))
                            .weather()
                            .rainMm());
        }
    }

    @Nested
    class Air {

        @Test
        void observedHoursHoldAndTheDaysFillTheRest() {
            HourlyAir seen = new HourlyAir(
                    hour(DAY, 5).from(),
                    Skies.all(3, 11),
                    Skies.all(3, 9),
                    Skies.all(3, 4),
                    Skies.all(3, 1));
            Known known = new Known(
                    List.of(),
                    List.of(DailyWeather.of(DAY, new TempRange(10, 30), 0)),
                    List.of(seen),
                    List.of());
            HourlyAir air = PastWeather.of(known, frame(DAY, 1)).weather().air();
            assertThat(air.airTempC()[5]).isEqualTo(11);
            assertThat(air.windMps()[7]).isEqualTo(4);
            assertThat(air.windMps()[8]).isEqualTo(DayCourse.UNKNOWN_WIND_MPS);
            assertThat(Arrays.stream(air.airTempC()).max().orElseThrow()).isBetween(29.5, 30.0);
        }

        @Test
        void theFirstSeriesThatHasAnHourHolds() {
            List<HourlyAir> both = List.of(steady(12), steady(25));
            Known known = new Known(List.of(), List.of(), both, List.of());
            assertThat(PastWeather.of(known, frame(DAY, 1)).weather().air().airTempC()[4])
                    .isEqualTo(12);
        }

        private HourlyAir steady(double tempC) {
            return new HourlyAir(
                    day(DAY, 1).from(),
                    Skies.all(24, tempC),
                    Skies.all(24, 5),
                    Skies.all(24, 2),
                    Skies.all(24, 0));
        }

        @Test
        void theHoursOfADayAddUpToItsMeasuredSun() {
            var sky = new DailyWeather.Sky(
                    OptionalDouble.of(18.5), OptionalDouble.of(0.7), OptionalDouble.empty());
            var day = new DailyWeather(
                    DAY, Optional.of(new TempRange(14, 27)), OptionalDouble.empty(), sky);
            Known known = new Known(List.of(), List.of(day), List.of(), List.of());
            EvaporationDemand sun =
                    PastWeather.of(known, frame(DAY, 1)).weather().sun();
            // The clock day and the solar day differ by an hour and a half of darkness only.
            assertThat(Arrays.stream(sun.radiationMjPerM2()).sum()).isCloseTo(18.5, within(0.1));
        }
    }

    @Nested
    class Faults {

        @Test
        void aReadingOfAFewMinutesCountsForTheHourItBeginsIn() {
            Instant from = hour(DAY, 6).from().plus(Duration.ofMinutes(40));
            var reading = new RainObservation(
                    new Window(from, from.plus(Duration.ofMinutes(35))), 9, "gauge", EARLY);
            double[] mm = PastWeather.of(rain(reading), frame(DAY, 1)).weather().rainMm();
            assertThat(mm[6]).isCloseTo(9, within(1e-9));
        }

        @Test
        void anHourBeyondTheRecordIsLeftOutByName() {
            PastWeather past = PastWeather.of(rain(daily(4), hourly(15, 900)), frame(DAY, 1));
            assertThat(past.days().get(0).rainMm()).isCloseTo(4, within(1e-9));
            assertThat(past.warnings())
                    .containsExactly(
                            "2026-07-10T19:00:00Z: 900 mm in 1 h is more than has ever fallen; left"
                                    + " out");
        }

        /** Whatever is fed in comes out as a past, not as an exception. */
        @Test
        void noMixOfExtremesBreaksThePast() {
            var random = new SplittableRandom(20260802);
            for (int round = 0; round < 500; round++) {
                List<RainObservation> all = new ArrayList<>();
                for (int i = random.nextInt(12); i >= 0; i--) {
                    Instant from = hour(DAY, random.nextInt(60)).from();
                    long minutes = 1 + random.nextInt(3000);
                    all.add(new RainObservation(
                            new Window(from, from.plus(Duration.ofMinutes(minutes))),
                            random.nextBoolean() ? 0 : random.nextDouble(1000),
                            random.nextBoolean() ? "gauge" : "stage4",
                            EARLY));
                }
                Known known = new Known(all, List.of(), List.of(), List.of());
                double[] mm = PastWeather.of(known, frame(DAY, 3)).weather().rainMm();
                assertThat(Arrays.stream(mm).max().orElseThrow()).isBetween(0.0, 305.0 + 1e-9);
            }
        }
    }

    @Test
    void aPastOfNoLengthIsRefused() {
        assertThatThrownBy(() -> frame(DAY, 0)).hasMessageContaining("past of no length");
    }
}
