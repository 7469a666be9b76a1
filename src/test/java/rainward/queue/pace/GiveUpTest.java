package rainward.queue.pace;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is given up so that the rest finishes; a crew that does two hectares a day without fail. */
class GiveUpTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 8, 1);
    private static final LocalDate EARLY = TODAY.plusDays(2);
    private static final LocalDate LATE = TODAY.plusDays(5);
    private static final double SAFE = 0.8;

    private static GiveUp field(String name, double areaHa, double worth, LocalDate deadline) {
        return new GiveUp(name, areaHa, worth, deadline, true);
    }

    private static List<String> given(GiveUp... waiting) {
        return GiveUp.of(
                        List.of(waiting),
                        (deadline, leftHa) ->
                                leftHa <= 2.0 * ChronoUnit.DAYS.between(TODAY, deadline) ? 1 : 0,
                        SAFE)
                .stream()
                .map(GiveUp::field)
                .toList();
    }

    @Test
    void nothingIsGivenUpWhereAllFinishes() {
        assertThat(given(field("A", 4, 0.1, EARLY), field("B", 6, 0.1, LATE))).isEmpty();
    }

    @Test
    void ofEachDeadlineTheLeastWorthGoesFirstAndNoMoreThanMust() {
        // By the early day 4 ha can be done of 6, by the late one 10 of what stays and the new 7.
        assertThat(given(
                        field("A", 2, 0.9, EARLY),
                        field("B", 2, 0.3, EARLY),
                        field("C", 2, 0.6, EARLY),
                        field("D", 3, 0.7, LATE),
                        field("E", 4, 0.8, LATE)))
                .containsExactly("B", "C");
    }

    @Test
    void laterGroundDoesNotPushOutWhatCanStillBeDoneByItsOwnDay() {
        // Until the early day all is well; only the late day is short, and its own field is least.
        assertThat(given(field("A", 4, 0.5, EARLY), field("B", 7, 0.4, LATE))).containsExactly("B");
    }

    @Test
    void earlierDeadlineIsSettledBeforeTheLaterOneIsAsked() {
        // Giving B up for the early day makes room enough for the late one: D stays.
        assertThat(given(
                        field("A", 4, 0.9, EARLY),
                        field("B", 2, 0.5, EARLY),
                        field("D", 6, 0.1, LATE)))
                .containsExactly("B");
    }

    @Test
    void fieldWithoutAnotherWayStays() {
        assertThat(given(new GiveUp("A", 3, 0.1, EARLY, false), field("B", 3, 0.9, EARLY)))
                .containsExactly("B");
    }

    @Test
    void chanceJustSafeIsEnough() {
        List<Double> asked = new ArrayList<>();
        assertThat(GiveUp.of(
                        List.of(field("A", 3, 0.1, EARLY)),
                        (deadline, leftHa) -> {
                            asked.add(leftHa);
                            return SAFE;
                        },
                        SAFE))
                .isEmpty();
        assertThat(asked).containsExactly(3.0);
    }
}
