package rainward.brief.making;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.brief.Brief;
import rainward.brief.Brief.Kind;
import rainward.brief.BriefDays;
import rainward.brief.Caution;
import rainward.brief.Change;
import rainward.brief.DaySketch;
import rainward.brief.ForecastAge;
import rainward.brief.Orders;
import rainward.brief.SampleCrew;
import rainward.brief.SoilLine;
import rainward.brief.words.OrderWords;
import rainward.brief.words.Reader;
import rainward.cycle.Outlook.Seedbed.Wetness;
import rainward.farm.FieldState;
import rainward.farm.Operation;
import rainward.farm.UnitSystem;
import rainward.readiness.Readiness.Gate;

/** What a brief gathers from a day. */
class BriefMakerTest {

    private static DaySketch thursday() {
        return new DaySketch(BriefDays.THURSDAY);
    }

    private static Brief day(String name) {
        return BriefDays.day(name).brief();
    }

    @ParameterizedTest
    @CsvSource({
        "dry-storm-in-three-days, WORK",
        "sunday-off, WORK_LATER",
        "all-too-wet, TOO_WET",
        "nothing-fits, NOTHING_FITS",
        "no-forecast, NO_FORECAST",
        "season-over, SEASON_OVER",
        "nothing-pending, NOTHING_PENDING"
    })
    void tellsWhatKindOfDayItIs(String name, Kind kind) {
        assertThat(day(name).heading().kind()).isEqualTo(kind);
    }

    @Nested
    class Order {

        @Test
        void fieldsWithWorkTodayComeApartFromThoseOfLaterDays() {
            Orders orders = day("dry-storm-in-three-days").orders();

            assertThat(orders.today())
                    .extracting(l -> l.place().field())
                    .containsExactly("Mill 3", "Kettle 1", "Otter Flat");
            assertThat(orders.later())
                    .extracting(l -> l.place().field())
                    .containsExactly("Mill 5", "Church East");
        }

        /** It is tilled today and its seed is kept: listed once, with why. */
        @Test
        void aFieldThatIsOnlyMadeReadyStandsInTheOrderAndNotBesideIt() {
            DaySketch day = thursday();
            day.work(1, "Mill 3", Operation.TILL, "tiller/Dell", day.span(0, "09:00", "12:00"));
            day.leaveOut("Mill 3", "is made ready; later rain is better for its seed");
            day.leaveOut("Mill 5", "has no mix that may be sown");
            Orders orders = day.brief().orders();

            assertThat(orders.leftOut())
                    .extracting(left -> left.place().field())
                    .containsExactly("Mill 5");
            assertThat(orders.today().get(0).reason())
                    .isEqualTo("is made ready; later rain is better for its seed");
        }

        @Test
        void stagesOfAFieldAreInOrderOfTime() {
            assertThat(day("dry-storm-in-three-days").orders().today().get(0).stages())
                    .extracting(Orders.StageLine::operation)
                    .containsExactly(Operation.TILL, Operation.SEED, Operation.FIRM);
        }

        @Test
        void aMixThatWasNotWantedFirstIsAFallBack() {
            List<Boolean> fallBacks = day("failed-stands").orders().today().stream()
                    .map(line -> line.sown().orElseThrow().fallBack())
                    .toList();

            assertThat(fallBacks).containsExactly(false, true);
        }
    }

    @Nested
    class WhatChanged {

        private Change of(String field) {
            return day("dry-storm-in-three-days").changes().stream()
                    .filter(change -> change.field().equals(field))
                    .findFirst()
                    .orElseThrow();
        }

        private Change oneChange(DaySketch before, DaySketch now) {
            now.last = Optional.of(before.asLast());
            assertThat(now.brief().changes()).hasSize(1);
            return now.brief().changes().get(0);
        }

        @Test
        void aMoveIsExplainedByRainThatMovedMost() {
            assertThat(of("Mill 3").kind()).isEqualTo(Change.Kind.EARLIER);
            assertThat(of("Mill 3").why()).isEqualTo("rain at Mill Pond: 41% before, 74% now");
        }

        @Test
        void seedThatIsInIsDoneAndTheRestSaysWhyItIsOut() {
            assertThat(of("Church West").kind()).isEqualTo(Change.Kind.SEEDED);
            assertThat(of("Otter Knoll").kind()).isEqualTo(Change.Kind.TAKEN_OUT);
            assertThat(of("Otter Knoll").why()).isEqualTo("no hour left before the rain");
        }

        @Test
        void allThatIsSeededShareALineAndOneAloneSaysSoItself() {
            DaySketch before = thursday();
            before.seed(1, "Mill 3", 0.5, before.span(0, "09:00", "10:00"));
            before.seed(2, "Mill 5", 0.5, before.span(0, "11:00", "12:00"));
            before.seed(3, "Kettle 1", 0.5, before.span(0, "13:00", "14:00"));
            DaySketch two = thursday().state(FieldState.SEEDED, "Mill 3", "Kettle 1");
            two.seed(1, "Mill 5", 0.5, two.span(0, "11:00", "12:00"));
            two.last = Optional.of(before.asLast());
            assertThat(changes(two)).containsExactly("Done, seed is in: Mill 3 and Kettle 1");

            DaySketch one = thursday().state(FieldState.SEEDED, "Mill 3");
            one.seed(1, "Mill 5", 0.5, one.span(0, "11:00", "12:00"));
            one.seed(2, "Kettle 1", 0.5, one.span(0, "13:00", "14:00"));
            one.last = Optional.of(before.asLast());
            assertThat(changes(one)).containsExactly("Mill 3: done (seed is in)");
        }

        private List<String> changes(DaySketch day) {
            Brief brief = day.brief();
            return new OrderWords(brief, new Reader(SampleCrew.DETROIT, UnitSystem.US_CUSTOMARY))
                    .changes();
        }

        @Test
        void theSameOrderIsNoChange() {
            DaySketch before = thursday();
            before.seed(1, "Mill 3", 0.5, before.span(1, "09:00", "12:00"));
            DaySketch now = thursday();
            now.seed(1, "Mill 3", 0.52, now.span(1, "10:30", "13:30"));
            now.last = Optional.of(before.asLast());

            assertThat(now.brief().changes()).isEmpty();
        }

        @Test
        void aMoveWithTheSameRainIsExplainedByTheChance() {
            DaySketch before = thursday();
            before.seed(1, "Mill 3", 0.5, before.span(1, "09:00", "12:00"));
            DaySketch now = thursday();
            now.seed(1, "Mill 3", 0.6, now.span(0, "09:00", "12:00"));

            Change change = oneChange(before, now);

            assertThat(change.kind()).isEqualTo(Change.Kind.EARLIER);
            assertThat(change.why()).isEqualTo("chance of a stand as planned: 50% before, 60% now");
        }

        @Test
        void aFieldPushedBackNamesTheOneThatTookItsPlace() {
            DaySketch before = thursday();
            before.seed(1, "Mill 3", 0.5, before.span(0, "07:00", "10:00"));
            before.seed(2, "Mill 5", 0.5, before.span(1, "07:00", "08:00"));
            DaySketch now = thursday();
            now.seed(1, "Mill 5", 0.5, now.span(1, "07:00", "08:00"));
            now.seed(2, "Mill 3", 0.5, now.span(1, "09:00", "12:00"));

            Change change = oneChange(before, now);

            assertThat(change.field()).isEqualTo("Mill 3");
            assertThat(change.kind()).isEqualTo(Change.Kind.LATER);
            assertThat(change.why()).isEqualTo("makes room for Mill 5");
        }

        @Test
        void anotherMixSaysWhichAndWhich() {
            DaySketch before = thursday();
            before.seed(1, "Mill 3", 0.5, before.span(0, "07:00", "10:00"));
            DaySketch now = thursday();
            now.seed(1, "Mill 3", SampleCrew.FALL_BACK, 0.5, now.span(0, "07:00", "10:00"));

            assertThat(oneChange(before, now).why())
                    .isEqualTo("three brassicas before, rye and clover now");
        }

        @Test
        void aFieldWithoutAStandIsBackInTheQueue() {
            DaySketch now = thursday();
            now.state(FieldState.FAILED, "Mill 3");
            now.seed(1, "Mill 3", 0.5, now.span(0, "07:00", "10:00"));

            assertThat(oneChange(thursday(), now).why())
                    .isEqualTo("no stand came up; it is back in the queue");
        }
    }

    @Nested
    class Age {

        private ForecastAge.Trust trust(Duration age) {
            DaySketch day = thursday();
            day.forecastAge = age;
            return day.brief().footing().trust();
        }

        @Test
        void aForecastAgesAfter12HoursAndIsNotFreshAfter36() {
            assertThat(trust(Duration.ofHours(12))).isEqualTo(ForecastAge.Trust.FRESH);
            assertThat(trust(Duration.ofHours(12).plusMinutes(1)))
                    .isEqualTo(ForecastAge.Trust.AGEING);
            assertThat(trust(Duration.ofHours(36))).isEqualTo(ForecastAge.Trust.AGEING);
            assertThat(trust(Duration.ofHours(36).plusMinutes(1)))
                    .isEqualTo(ForecastAge.Trust.STALE);
            assertThat(day("no-forecast").footing().trust()).isEqualTo(ForecastAge.Trust.NONE);
        }

        @Test
        void aBriefIsLateAQuarterOfAnHourAfterItsTime() {
            assertThat(thursday()
                            .writtenAfter(Duration.ofMinutes(15))
                            .brief()
                            .heading()
                            .written()
                            .late())
                    .isFalse();
            assertThat(thursday()
                            .writtenAfter(Duration.ofMinutes(16))
                            .brief()
                            .heading()
                            .written()
                            .late())
                    .isTrue();
        }

        @Test
        void aBriefWrittenAfterMidnightIsStillThatOfTheDayItWasDue() {
            assertThat(thursday()
                            .writtenAfter(Duration.ofHours(20))
                            .brief()
                            .heading()
                            .day())
                    .isEqualTo(BriefDays.THURSDAY);
        }
    }

    @Nested
    class GroundAndSeason {

        @Test
        void fieldsThatAreAlikeShareALineAndOthersDoNot() {
            DaySketch day = thursday();
            Instant from = day.at(1, "10:00");
            day.seedbed("Mill 3", day.bed(Wetness.WET, 21, Optional.of(from)));
            day.seedbed("Otter Flat", day.bed(Wetness.SOAKED, 20, Optional.empty()));

            List<SoilLine> lines = day.brief().ground();

            assertThat(lines)
                    .extracting(SoilLine::property)
                    .containsExactly(
                            "Kettle Lake",
                            "Mill Pond",
                            "Mill Pond",
                            "Otter Creek",
                            "Otter Creek",
                            "Stone Church");
            assertThat(lines.get(0).fields()).containsExactly("Kettle 1", "Kettle 2");
            assertThat(lines.get(0).workable().now()).isTrue();
            assertThat(lines.get(2).workable().from()).contains(from);
            assertThat(lines.get(4).workable())
                    .isEqualTo(new SoilLine.Workable(false, Optional.empty()));
        }

        @Test
        void groundThatIsSownIsNotListed() {
            DaySketch day = thursday();
            day.state(FieldState.SEEDED, "Mill 3", "Mill 5");

            assertThat(day.brief().ground())
                    .extracting(SoilLine::property)
                    .doesNotContain("Mill Pond");
        }

        @Test
        void everyAcreIsEitherDoneOrLeftUnlessItWasDropped() {
            DaySketch day = thursday();
            day.state(FieldState.SEEDED, "Mill 3").state(FieldState.DROPPED, "Otter Flat");

            Brief.SeasonView season = day.brief().ahead().season();

            double acres = 0.404_685_642_24;
            assertThat(season.doneHa() / acres)
                    .isCloseTo(6.1, org.assertj.core.api.Assertions.within(1e-9));
            assertThat(season.leftHa() / acres)
                    .isCloseTo(19.1, org.assertj.core.api.Assertions.within(1e-9));
        }

        @Test
        void aFieldInTwoStretchesCountsOnceForTheFallBackMix() {
            assertThat(day("failed-stands").ahead().season().lateHa() / 0.404_685_642_24)
                    .isCloseTo(8.4, org.assertj.core.api.Assertions.within(1e-9));
        }

        @Test
        void onlyStandsThatCanBeToldAreToBeLookedAt() {
            assertThat(day("failed-stands").ahead().standChecks())
                    .extracting(Brief.StandCheck::field)
                    .containsExactly("Mill 5");
        }
    }

    @Nested
    class Cautions {

        private <T extends Caution> List<T> of(DaySketch day, Class<T> kind) {
            return day.brief().cautions().stream()
                    .filter(kind::isInstance)
                    .map(kind::cast)
                    .toList();
        }

        @Test
        void heatIsToldWhereItIsWorst() {
            List<Caution.Heat> heat = of(BriefDays.day("hot-and-windy"), Caution.Heat.class);

            assertThat(heat).hasSize(1);
            assertThat(heat.get(0).property()).isEqualTo("Otter Creek");
            assertThat(heat.get(0).care()).isEqualTo(HeatIndex.Care.VERY_HIGH);
        }

        @Test
        void aMildDayNeedsNoWordOnHeat() {
            assertThat(of(thursday(), Caution.Heat.class)).isEmpty();
        }

        @Test
        void rainThatIsLikelyTodayBringsTheWordOnThunderTomorrowsDoesNot() {
            DaySketch today = thursday().rain("Mill Pond", 0.05, 0.15);
            DaySketch tomorrow = thursday().rain("Mill Pond", 0.05, 0.1, 0.1, 0.1, 0.9, 0.9);

            assertThat(of(today, Caution.Thunder.class))
                    .containsExactly(new Caution.Thunder(List.of("Mill Pond"), 0.15));
            assertThat(of(tomorrow, Caution.Thunder.class)).isEmpty();
        }

        @Test
        void windIsThatOfTheHoursInWhichSomethingIsSprayed() {
            DaySketch day = thursday().air("Otter Creek", 27, 15, 4);
            day.work(
                    1,
                    "Otter Flat",
                    Operation.SPRAY,
                    "sprayer/Boyd",
                    day.span(0, "14:00", "16:00"));

            List<Caution.Wind> wind = of(day, Caution.Wind.class);

            assertThat(wind).hasSize(1);
            assertThat(wind.get(0).greatestMps())
                    .isCloseTo(6.0, org.assertj.core.api.Assertions.within(1e-9));
            assertThat(wind.get(0).leastMps()).isBetween(5.5, 6.0);
            assertThat(of(day, Caution.Spray.class)).hasSize(1);
        }

        @Test
        void spreadingOfOneFarmIsOneCautionFromItsFirstHourToItsLast() {
            DaySketch day = thursday().air("Otter Creek", 27, 15, 4);
            day.work(1, "Otter Flat", Operation.SPREAD, "a/Boyd", day.span(0, "07:00", "08:00"));
            day.work(2, "Otter Knoll", Operation.SPREAD, "a/Boyd", day.span(0, "14:00", "16:00"));

            List<Caution.Wind> wind = of(day, Caution.Wind.class);

            assertThat(wind).hasSize(1);
            assertThat(wind.get(0).when()).isEqualTo(day.span(0, "07:00", "16:00"));
            assertThat(wind.get(0).leastMps()).isLessThan(5.0);
            assertThat(wind.get(0).greatestMps()).isGreaterThan(5.5);
        }

        @Test
        void onlySlopesThatAreWorkedTodayAreNamed() {
            DaySketch day = thursday();
            day.seed(1, "Otter Knoll", 0.5, day.span(0, "09:00", "10:00"));
            day.seed(2, "Kettle 2", 0.5, day.span(1, "09:00", "10:00"));

            assertThat(of(day, Caution.Slope.class))
                    .containsExactly(new Caution.Slope(List.of("Otter Knoll"), 0.18));
        }

        @Test
        void aDayWithoutWorkOrWeatherHasNone() {
            assertThat(thursday().brief().cautions()).isEmpty();
        }
    }

    @Test
    void aStageLeftOpenOnAnEarlierDayIsAQuestion() {
        assertThat(day("hostile-names").footing().questions())
                .containsExactly("Mill\\r\\nBcc: all@example.org: dis\\u202ek was started on an "
                        + "earlier day. Is it finished?");
    }

    @Test
    void aFieldOutOfSeedSaysSo() {
        DaySketch now = thursday();
        now.gate("Mill 3", Gate.Kind.NO_SEED, "no seed left");
        DaySketch before = thursday();
        before.seed(1, "Mill 3", 0.5, before.span(0, "07:00", "10:00"));
        now.last = Optional.of(before.asLast());

        assertThat(now.brief().changes().get(0).why()).isEqualTo("no seed left");
    }

    @Test
    void theDayOfTheBriefIsTheFarmsNotThatOfGreenwich() {
        DaySketch day = new DaySketch(LocalDate.of(2026, 7, 16));
        day.seed(1, "Mill 3", 0.5, day.span(0, "21:00", "23:30"));

        assertThat(day.brief().orders().today()).hasSize(1);
    }
}
