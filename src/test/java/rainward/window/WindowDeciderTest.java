package rainward.window;

import static org.assertj.core.api.Assertions.assertThat;
import static rainward.window.StormWindows.RULES;
import static rainward.window.StormWindows.THURSDAY_RAIN;
import static rainward.window.StormWindows.TUESDAY;
import static rainward.window.StormWindows.likely;
import static rainward.window.StormWindows.window;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rainward.window.WindowDecider.Decided;
import rainward.window.WindowDecision.Reason;
import rainward.window.WindowDecision.Step;

class WindowDeciderTest {

    /** 01:00 in the farm's zone. */
    private static final Instant NIGHT = Instant.parse("2026-07-14T05:00:00Z");

    private static Decided decide(WindowRecord before, Instant now, StormWindow... seen) {
        return WindowDecider.decide(before, List.of(seen), RULES, now);
    }

    private static WindowDecision only(Decided decided) {
        assertThat(decided.decisions()).hasSize(1);
        return decided.decisions().get(0);
    }

    @Nested
    class Opening {

        @Test
        void aLikelyRainWithGroundAheadOfItOpensAWindowAndIsTold() {
            WindowDecision decision = only(decide(WindowRecord.NOTHING, TUESDAY, likely()));
            assertThat(decision.step()).isEqualTo(Step.OPEN);
            assertThat(decision.send()).isTrue();
            assertThat(decision.window().id()).isEqualTo("Creek 2026-07-16");
        }

        @Test
        void anUnlikelyRainOpensNothing() {
            Decided decided = decide(
                    WindowRecord.NOTHING,
                    TUESDAY,
                    window(0.45, THURSDAY_RAIN, List.of("F1"), List.of()));
            assertThat(only(decided).reason()).isEqualTo(Reason.NOT_LIKELY);
            assertThat(decided.next().open()).isEmpty();
        }

        @Test
        void aLikelyRainWithNothingToSeedAheadOfItOpensNothing() {
            Decided decided = decide(
                    WindowRecord.NOTHING,
                    TUESDAY,
                    window(0.9, THURSDAY_RAIN, List.of(), List.of("F2")));
            assertThat(only(decided).reason()).isEqualTo(Reason.NOTHING_LEFT_TO_SEED);
            assertThat(decided.next().open()).isEmpty();
        }
    }

    @Nested
    class Going {

        private final WindowRecord open =
                decide(WindowRecord.NOTHING, TUESDAY, likely()).next();
        private final Instant later = TUESDAY.plus(Duration.ofHours(1));

        @Test
        void sayingItTwiceTellsItOnce() {
            WindowDecision decision = only(decide(open, later, likely()));
            assertThat(decision.step()).isEqualTo(Step.KEEP);
            assertThat(decision.send()).isFalse();
        }

        @Test
        void betweenTheTwoThresholdsItStaysOpen() {
            StormWindow fallen = window(0.55, THURSDAY_RAIN, List.of("F1"), List.of("F2"));
            WindowRecord next = decide(open, later, fallen).next();
            StormWindow lower = window(0.4, THURSDAY_RAIN, List.of("F1"), List.of("F2"));
            assertThat(decide(next, later, lower).next().open()).hasSize(1);
        }

        @Test
        void belowTheLowerThresholdItClosesAndTheCrewIsTold() {
            WindowDecision decision = only(
                    decide(open, later, window(0.3, THURSDAY_RAIN, List.of("F1"), List.of("F2"))));
            assertThat(decision.step()).isEqualTo(Step.CLOSE);
            assertThat(decision.reason()).isEqualTo(Reason.RAIN_FADED);
            assertThat(decision.send()).isTrue();
        }

        @Test
        void rainThatComesMuchEarlierIsToldUnderTheSameId() {
            StormWindow early = window(
                    0.7, THURSDAY_RAIN.minus(Duration.ofHours(12)), List.of("F1"), List.of("F2"));
            WindowDecision decision = only(decide(open, later, early));
            assertThat(decision.reason()).isEqualTo(Reason.ARRIVAL_MOVED);
            assertThat(decision.words()).contains("12 h earlier");
            assertThat(decision.window().id()).isEqualTo("Creek 2026-07-16");
        }

        @Test
        void aShiftThatIsSmallAgainstTheTimeToGoIsNotTold() {
            StormWindow early = window(
                    0.7, THURSDAY_RAIN.minus(Duration.ofHours(6)), List.of("F1"), List.of("F2"));
            assertThat(only(decide(open, later, early)).reason()).isEqualTo(Reason.NO_CHANGE);
        }

        @Test
        void aFieldThatFitsNoMoreIsNamed() {
            StormWindow less = window(0.7, THURSDAY_RAIN, List.of("F3"), List.of("F1", "F2"));
            WindowDecision decision = only(decide(open, later, less));
            assertThat(decision.reason()).isEqualTo(Reason.FIELD_FITS_NO_MORE);
            assertThat(decision.words()).contains("F1").doesNotContain("F2");
        }

        @Test
        void aFieldThatHasItsSeedByNowIsNoNews() {
            StormWindow seeded = window(0.7, THURSDAY_RAIN, List.of("F3"), List.of("F2"));
            assertThat(only(decide(open, later, seeded)).send()).isFalse();
        }

        @Test
        void whenTheRainIsThereItClosesWithoutAMessage() {
            WindowDecision decision = only(decide(open, THURSDAY_RAIN));
            assertThat(decision.reason()).isEqualTo(Reason.RAIN_CAME);
            assertThat(decision.send()).isFalse();
        }

        @Test
        void anIdIsNeverGivenTwice() {
            WindowRecord closed = decide(
                            open, later, window(0.1, THURSDAY_RAIN, List.of("F1"), List.of()))
                    .next();
            WindowDecision again = only(decide(closed, later, likely()));
            assertThat(again.window().id()).isEqualTo("Creek 2026-07-16 2");
        }
    }

    @Nested
    class Manners {

        @Test
        void atNightAWindowWaitsForTheMorning() {
            Decided night = decide(WindowRecord.NOTHING, NIGHT, likely());
            assertThat(only(night).send()).isFalse();
            assertThat(only(night).reason()).isEqualTo(Reason.QUIET_HOURS);
            WindowDecision morning = only(decide(night.next(), TUESDAY, likely()));
            assertThat(morning.step()).isEqualTo(Step.OPEN);
            assertThat(morning.send()).isTrue();
        }

        @Test
        void atNightAWindowThatCannotWaitIsTold() {
            Instant noon = Instant.parse("2026-07-14T16:00:00Z");
            StormWindow soon = window(0.8, noon, List.of("F1"), List.of());
            assertThat(only(decide(WindowRecord.NOTHING, NIGHT, soon)).send()).isTrue();
        }

        @Test
        void noMoreMessagesThanADayMayHave() {
            WindowRecord record = WindowRecord.NOTHING;
            int sent = 0;
            for (int i = 0; i < 12; i++) {
                Instant shifted = THURSDAY_RAIN.minus(Duration.ofHours(i % 2 == 0 ? 0 : 14));
                Decided decided = decide(
                        record,
                        TUESDAY.plus(Duration.ofMinutes(30L * i)),
                        window(0.7, shifted, List.of("F1"), List.of("F2")));
                sent += (int) decided.decisions().stream()
                        .filter(WindowDecision::send)
                        .count();
                record = decided.next();
            }
            assertThat(sent).isEqualTo(RULES.manners().mostADay());
        }
    }

    @Nested
    class Laws {

        @Test
        void aWindowOpensOnceClosesOnceAndIsNeverToldAfterwards() {
            SplittableRandom random = new SplittableRandom(20260716);
            for (int run = 0; run < 200; run++) {
                WindowRecord record = WindowRecord.NOTHING;
                List<String> opened = new ArrayList<>();
                List<String> closed = new ArrayList<>();
                for (int hour = 0; hour < 70; hour++) {
                    StormWindow seen = window(
                            random.nextDouble(),
                            THURSDAY_RAIN.plus(Duration.ofHours(random.nextInt(-9, 9))),
                            random.nextBoolean() ? List.of("F1", "F3") : List.of("F3"),
                            List.of("F2"));
                    Instant now = TUESDAY.plus(Duration.ofHours(hour));
                    Decided decided = WindowDecider.decide(record, List.of(seen), RULES, now);
                    for (WindowDecision d : decided.decisions()) {
                        if (d.send()) {
                            assertThat(closed).doesNotContain(d.window().id());
                        }
                        if (d.send() && d.step() == Step.OPEN) {
                            opened.add(d.window().id());
                        }
                        if (d.step() == Step.CLOSE) {
                            closed.add(d.window().id());
                        }
                    }
                    record = decided.next();
                }
                assertThat(opened).doesNotHaveDuplicates();
                assertThat(closed).doesNotHaveDuplicates();
            }
        }

        @Test
        void theSameRecordGivesTheSameDecisions() {
            Decided once = decide(WindowRecord.NOTHING, TUESDAY, likely());
            assertThat(decide(WindowRecord.NOTHING, TUESDAY, likely())).isEqualTo(once);
        }
    }
}
