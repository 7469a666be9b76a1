package rainward.readiness;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.UnitSystem;
import rainward.intake.Shipped;
import rainward.readiness.Readiness.Gate;

class ReadinessModelTest {

    @Nested
    class Reasons {
        /** Rain on Thursday at 05:00, on seven traces of ten, hard on one. */
        private Ahead stormOnThursday() {
            return new Ahead().rain(36, 7, 12.7, 12).rain(36, 1, 12.7, 25);
        }

        @Test
        void aForemanReadsRainGroundAndRisk() {
            assertThat(stormOnThursday().readiness().reason())
                    .isEqualTo("Seed now: 0.5 in likely Thursday dawn (70%); top inch dry, so"
                            + " nothing starts before rain; hard-rain risk 10% on this"
                            + " slope.");
        }

        @Test
        void theSameIsSaidInMetric() {
            Ahead ahead = stormOnThursday();
            ahead.units = UnitSystem.METRIC;
            assertThat(ahead.readiness().reason())
                    .contains("13 mm likely Thursday dawn")
                    .contains("top 2 to 3 cm dry");
        }

        @Test
        void moistGroundTellsWhenItComesUp() {
            assertThat(new Ahead().moist().readiness().reason())
                    .startsWith("Seed now: little rain in sight")
                    .contains("moist at seed depth, up in about 4 days");
        }
    }

    @Nested
    class Age {
        private List<Gate.Kind> gatesAt(Duration age) {
            Ahead ahead = new Ahead().moist();
            ahead.issuedAt = Ahead.TUESDAY.minus(age);
            return ahead.readiness().gates().stream().map(Gate::kind).toList();
        }

        @Test
        void aForecastPastThirtySixHoursHoldsTheFieldBack() {
            assertThat(gatesAt(Duration.ofHours(36))).doesNotContain(Gate.Kind.FORECAST_TOO_OLD);
            assertThat(gatesAt(Duration.ofHours(36).plusSeconds(1)))
                    .contains(Gate.Kind.FORECAST_TOO_OLD);
        }
    }

    @Nested
    class Numbers {
        @Test
        void nobodySeedsAtNight() {
            Ahead ahead = new Ahead().moist();
            ahead.work = new ReadinessCase.Work(
                    List.of("till"), Ahead.TUESDAY.plus(Duration.ofHours(5)), Ahead.SIX_TO_EIGHT);
            Figures figures = ahead.readiness().figures().orElseThrow();
            assertThat(figures.nextSeedAt()).isEqualTo("2026-07-15T10:00:00Z");
            assertThat(ahead.readiness().reason()).startsWith("Seed tomorrow dawn, after till: ");
        }

        @Test
        void rainIsTimedAndSizedOverTheTracesThatHaveIt() {
            Ahead ahead = new Ahead().rain(36, 4, 10, 12).rain(40, 2, 20, 30);
            Figures.Rain rain = ahead.readiness().figures().orElseThrow().rain();
            assertThat(rain.chance()).isEqualTo(0.4);
            assertThat(rain.hardChance()).isEqualTo(0.2);
            Figures.FirstRain first = rain.first().orElseThrow();
            assertThat(first.earliest()).isEqualTo(Ahead.TUESDAY.plus(Duration.ofHours(36)));
            assertThat(first.amountMm()).isEqualTo(new Figures.Range(10, 30, 30));
        }

        @Test
        void theSeedbedIsToldWithItsRangeAndCourse() {
            Ahead ahead = new Ahead();
            ahead.surfaceTempC[5][0] = 47;
            Figures.Seedbed bed = ahead.readiness().figures().orElseThrow().seedbed();
            assertThat(bed.waterFraction()).isEqualTo(new Figures.Range(0.1, 0.1, 0.1));
            assertThat(bed.meanTempC()).isEqualTo(26);
            assertThat(bed.hottestSurfaceC()).isEqualTo(30);
            assertThat(bed.course().timeOf(1)).isEqualTo(Ahead.TUESDAY.plusSeconds(3 * 3600));
            assertThat(bed.course().ranges()).hasSize(Ahead.HOURS / 3);
        }

        @Test
        void whatWouldHelpMostIsSaidUnlessItIsTheRainThatTheLineBeginsWith() {
            Ahead hot = new Ahead().moist();
            for (double[] row : hot.surfaceTempC) {
                Arrays.fill(row, 59);
            }
            assertThat(hot.readiness().reason()).contains("milder soil would help most");
            assertThat(new Ahead().readiness().reason()).doesNotContain("help most");
            assertThat(new Ahead()
                            .readiness()
                            .figures()
                            .orElseThrow()
                            .sensitivities()
                            .get(0))
                    .extracting(Figures.Sensitivity::factor)
                    .isEqualTo(Figures.Factor.RAIN);
        }

        @Test
        void aMixThatStandsInIsNamed() {
            Ahead ahead = new Ahead().moist();
            ahead.mixes = List.of(Shipped.mix("turnip and rape"));
            assertThat(ahead.readiness().reason()).startsWith("Seed now, with turnip and rape: ");
        }
    }

    @Nested
    class Scores {
        @Test
        void moistGroundScoresFull() {
            Readiness readiness = new Ahead().moist().readiness();
            assertThat(readiness.score()).isEqualTo(100);
            assertThat(readiness.parts().moisture()).isEqualTo(100);
            assertThat(readiness.gates()).isEmpty();
        }

        @Test
        void moreTracesWithRainScoreHigher() {
            int before = -1;
            for (int traces = 0; traces <= 10; traces += 2) {
                Readiness readiness = new Ahead().rain(36, traces, 15, 10).readiness();
                assertThat(readiness.score()).isGreaterThan(before);
                assertThat(readiness.parts().rain()).isBetween(traces * 10 - 5, traces * 10);
                before = readiness.score();
            }
        }

        @Test
        void dryGroundHasNoMoisturePart() {
            assertThat(new Ahead().readiness().parts().moisture()).isZero();
        }

        @Test
        void theNextHourIsTheFirstWorkableOne() {
            Readiness wet = new Ahead().moist().wetFor(20).readiness();
            assertThat(wet.gates()).extracting(Gate::kind).containsExactly(Gate.Kind.NOT_WORKABLE);
            assertThat(wet.reason()).startsWith("Seed tomorrow afternoon: ");
            assertThat(wet.chances().bestSeedAt())
                    .contains(Ahead.TUESDAY.plus(Duration.ofHours(20)));
        }
    }

    @Nested
    class Gating {
        @Test
        void seedThatIsInWaitsForNothing() {
            Ahead ahead = new Ahead();
            ahead.status = status(FieldState.SEEDED, Optional.empty());
            assertGate(ahead.readiness(), Gate.Kind.NOT_WAITING, "seed is in");
        }

        @Test
        void aHeldFieldSaysUntilWhen() {
            Ahead ahead = new Ahead();
            var friday = Ahead.TUESDAY.plus(Duration.ofHours(64));
            ahead.status = status(FieldState.PENDING, Optional.of(friday));
            assertGate(ahead.readiness(), Gate.Kind.HELD, "Friday morning");
        }

        @Test
        void aMixOutOfSeasonIsNotSown() {
            Ahead ahead = new Ahead().moist();
            ahead.mixes = List.of(Shipped.mix("rye wheat and oats"));
            assertGate(ahead.readiness(), Gate.Kind.OUT_OF_SEASON, "no mix");
        }

        @Test
        void anEmptyShedIsNamedWithTheSeed() {
            Ahead ahead = new Ahead().moist();
            ahead.outOfStock = Set.of("three brassicas");
            assertGate(ahead.readiness(), Gate.Kind.NO_SEED, "three brassicas");
        }

        @Test
        void noForecastIsSaidAsSuch() {
            ReadinessCase known = new Ahead().question();
            ReadinessCase blind = new ReadinessCase(
                    known.item(), known.work(), Optional.empty(), Set.of(), known.teller());
            assertGate(ReadinessModel.usual().of(blind), Gate.Kind.NO_FORECAST, "no forecast");
        }

        @Test
        void openStagesAndAnOldForecastAreToldBesideTheChance() {
            Ahead ahead = new Ahead().moist();
            ahead.work = new ReadinessCase.Work(
                    List.of("disk", "till"),
                    Ahead.TUESDAY.plus(Duration.ofHours(2)),
                    Ahead.SIX_TO_EIGHT);
            ahead.issuedAt = Ahead.TUESDAY.minus(Duration.ofHours(40));
            Readiness readiness = ahead.readiness();
            assertThat(readiness.gates())
                    .extracting(Gate::words)
                    .containsExactly("still to do: disk, till", "the forecast is 40 hours old");
            assertThat(readiness.score()).isEqualTo(100);
            assertThat(readiness.reason()).startsWith("Seed this evening, after till: ");
        }

        private static void assertGate(Readiness readiness, Gate.Kind kind, String words) {
            assertThat(readiness.score()).isZero();
            assertThat(readiness.gates()).singleElement().extracting(Gate::kind).isEqualTo(kind);
            assertThat(readiness.gates().get(0).words()).contains(words);
            assertThat(readiness.reason().toLowerCase(java.util.Locale.ROOT))
                    .contains(words.toLowerCase(java.util.Locale.ROOT));
        }

        private static FieldStatus status(FieldState state, Optional<java.time.Instant> heldUntil) {
            return new FieldStatus(state, List.of(), Optional.empty(), heldUntil, false);
        }
    }
}
