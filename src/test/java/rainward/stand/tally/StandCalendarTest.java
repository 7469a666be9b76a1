package rainward.stand.tally;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rainward.stand.Seedbeds.FIELD_CAPACITY_MPA;
import static rainward.stand.Seedbeds.WILTING_POINT_MPA;
import static rainward.stand.Seedbeds.steady;

import java.time.Instant;
import java.time.LocalDate;
import java.time.MonthDay;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.farm.Mix;
import rainward.farm.Season;
import rainward.stand.Seedbeds;
import rainward.stand.StandOutlook;
import rainward.stand.model.StandModel;

class StandCalendarTest {

    @Nested
    class SowingDates {
        @Test
        void noSeedGoesInAfterTheLastDayOfTheFarm() {
            Mix mix = until(MonthDay.of(8, 15), MonthDay.of(12, 30));
            StandOutlook outlook = moistFrom("2026-08-14T04:00:00Z").outlook(mix, 72);
            assertThat(outlook.chance()[47]).isEqualTo(1);
            assertThat(outlook.chance()[48]).isZero();
            assertThat(outlook.worth()[48]).isZero();
            assertThat(outlook.emergence().get(48).known()).isFalse();
        }

        @Test
        void aMixThatIsOutOfSeasonThroughoutIsAnsweredAtOnce() {
            Mix mix = until(MonthDay.of(8, 15), MonthDay.of(12, 30));
            StandOutlook outlook = moistFrom("2026-09-01T04:00:00Z").outlook(mix, 48);
            assertThat(outlook.chance()).hasSize(48).containsOnly(0);
            assertThat(outlook.emergence().get(0).known()).isFalse();
        }

        /** Clocks go back in Michigan on 1 November 2026: the day has 25 hours. */
        @Test
        void theDayThatHasTwentyFiveHoursCountsAllOfThem() {
            Mix mix = until(MonthDay.of(11, 1), MonthDay.of(12, 30));
            StandOutlook outlook = moistFrom("2026-11-01T04:00:00Z").outlook(mix, 30);
            assertThat(outlook.chance()[24]).isEqualTo(1);
            assertThat(outlook.chance()[25]).isZero();
        }
    }

    @Nested
    class Worth {
        private final Mix mix = until(MonthDay.of(8, 31), MonthDay.of(8, 10));

        @Test
        void aStandIsWorthWhatItsDayOfEmergenceIs() {
            StandOutlook outlook = moistFrom("2026-08-12T04:00:00Z").outlook(mix, 1);
            LocalDate up = Instant.parse("2026-08-12T04:00:00Z")
                    .plusSeconds(Math.round(outlook.emergence().get(0).p50Days() * 86_400))
                    .atZone(Seedbeds.DETROIT)
                    .toLocalDate();
            assertThat(outlook.worth()[0])
                    .isCloseTo(mix.season().worthOn(up), within(0.03))
                    .isBetween(0.5, 0.9);
        }

        @Test
        void laterEmergenceIsNeverWorthMore() {
            double before = 1;
            for (int day = 0; day < 40; day++) {
                Instant start = Instant.parse("2026-07-20T04:00:00Z").plusSeconds(day * 86_400L);
                double now = moistFrom(start.toString()).outlook(mix, 1).worth()[0];
                assertThat(now).isLessThanOrEqualTo(before + 1e-12);
                before = now;
            }
            assertThat(before).isZero();
        }
    }

    @Nested
    class AfterTheTraces {
        private final Mix turnip = Seedbeds.alone("turnip");

        @Test
        void drySeedWithNoRainToComeMakesNoStand() {
            StandOutlook outlook = dry().followedBy(dry264()).outlook(turnip, 168);
            assertThat(outlook.chance()).containsOnly(0);
            assertThat(outlook.losses().get(0).stillDryFraction()).isCloseTo(1, within(1e-9));
        }

        @Test
        void drySeedComesUpWithARainThatFallsLater() {
            StandOutlook outlook =
                    dry().followedBy(dry264().potential(24, 264, -0.03)).outlook(turnip, 168);
            assertThat(outlook.chance()).containsOnly(1);
            assertThat(outlook.emergence().get(0).p50Days()).isBetween(13.0, 17.0);
            assertThat(outlook.emergence().get(100).p50Days()).isBetween(13 - 4.2, 17 - 4.1);
        }

        @Test
        void aRainTooLateForTheJudgingDayMakesNoStand() {
            StandOutlook outlook =
                    dry().followedBy(dry264().potential(228, 264, -0.03)).outlook(turnip, 168);
            assertThat(outlook.chance()).containsOnly(0);
        }

        @Test
        void aLaterShowerBeforeDroughtKillsWhatWaited() {
            Seedbeds shower = dry264().potential(24, 60, -0.03).drought(60, 264, 8);
            StandOutlook outlook = dry().followedBy(shower).outlook(turnip, 1);
            assertThat(outlook.chance()).containsOnly(0);
            assertThat(outlook.losses().get(0).falseStartFraction()).isGreaterThan(0.9);
        }

        @Test
        void aLaterStormWashesOutOnASlope() {
            Seedbeds storm = dry264().rain(12, 60, 100);
            StandOutlook outlook = StandModel.usual()
                    .outlook(dry().followedBy(storm).sown(turnip, Seedbeds.rolled(0.1), 1));
            assertThat(outlook.losses().get(0).washOutFraction()).isGreaterThan(0.1);
        }

        /** Two steps of time behind one another are no different from one. */
        @Test
        void weatherCutInTwoGivesTheAnswerOfTheWhole() {
            Seedbeds whole = steady(504, -0.5, 25).potential(200, 300, -0.03).rain(250, 20, 30);
            Seedbeds first = steady(240, -0.5, 25).potential(200, 240, -0.03);
            Seedbeds second = dry264().potential(0, 264, -0.5).potential(0, 60, -0.03);
            StandOutlook cut = first.followedBy(second.rain(10, 20, 30)).outlook(turnip, 168);
            StandOutlook uncut = whole.outlook(turnip, 168);
            assertThat(cut.chance()).isEqualTo(uncut.chance());
            assertThat(cut.worth()).isEqualTo(uncut.worth());
            assertThat(cut.losses()).isEqualTo(uncut.losses());
        }

        /** Looking back: what is under way when the known weather ends is taken to come up. */
        @Test
        void whatIsUnderWayWhenNothingMoreIsKnownCounts() {
            StandOutlook outlook = steady(240, FIELD_CAPACITY_MPA, 25).outlook(turnip, 240);
            assertThat(outlook.chance()[120]).isEqualTo(1);
            assertThat(outlook.chance()[230]).isEqualTo(1);
        }

        private static Seedbeds dry() {
            return steady(240, WILTING_POINT_MPA, 25);
        }

        private static Seedbeds dry264() {
            return steady(264, WILTING_POINT_MPA, 25);
        }

        @Test
        void pastTheEndOfTheSeasonThereIsNoLaterRain() {
            Mix mix = until(MonthDay.of(8, 31), MonthDay.of(8, 10));
            StandOutlook outlook = steady(240, WILTING_POINT_MPA, 25)
                    .starting(Instant.parse("2026-08-24T04:00:00Z"))
                    .outlook(mix, 24);
            assertThat(outlook.chance()).containsOnly(0);
        }
    }

    private static Seedbeds moistFrom(String start) {
        return steady(360, FIELD_CAPACITY_MPA, 25).starting(Instant.parse(start));
    }

    /**
     * Turnip sown until a day, of full worth until another, of none after 31 August or the year.
     */
    private static Mix until(MonthDay lastSowing, MonthDay fullWorthUntil) {
        MonthDay last = fullWorthUntil.isAfter(MonthDay.of(8, 31))
                ? MonthDay.of(12, 31)
                : MonthDay.of(8, 31);
        return new Mix(
                "turnip",
                Seedbeds.alone("turnip").components(),
                1.3,
                0.35,
                new Season(MonthDay.of(7, 1), lastSowing, fullWorthUntil, last, 1, 0.3));
    }
}
