package rainward.replay.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rainward.replay.crew.Policy;
import rainward.replay.score.FieldResult.Cause;
import rainward.replay.score.FieldResult.Fate;

/** Scores of seasons whose outcome is laid down. */
class ComparisonTest {

    private static final double ACRE_HA = 0.40468564224;

    private static FieldResult field(String name, boolean stand, double told) {
        Fate fate = new Fate(stand, stand ? 1 : 0, stand ? Cause.NOTHING : Cause.FALSE_START);
        return new FieldResult(name, "mix", Instant.EPOCH, ACRE_HA, 1, told, fate, fate);
    }

    /** A score in which so many of ten one-acre fields came up. */
    private static SeasonScore score(Policy policy, int up) {
        List<FieldResult> fields = IntStream.range(0, 10)
                .mapToObj(i -> field("F" + i, i < up, i < up ? 0.9 : 0.3))
                .toList();
        return new SeasonScore(
                policy,
                SeasonScore.Sums.of(fields, FieldResult::model),
                SeasonScore.Sums.of(fields, FieldResult::plain),
                new SeasonScore.Effort(10 * ACRE_HA, 100, 1, 2),
                fields);
    }

    private static SeasonResult season(int day, int listed, int rainward, int ceiling) {
        return new SeasonResult(
                "s",
                LocalDate.of(2020, 7, day),
                1,
                List.of(
                        score(Policy.AS_LISTED, listed),
                        score(Policy.RAINWARD, rainward),
                        score(Policy.TOLD_THE_FUTURE, ceiling)));
    }

    @Test
    void shareOfTheGapIsCountedFromHabitToCeiling() {
        Comparison comparison = Comparison.of(List.of(season(1, 4, 7, 10), season(2, 2, 5, 8)));

        assertThat(comparison.gapClosed().vsAsListed()).isCloseTo(0.5, within(1e-9));
        assertThat(comparison.gapClosed().bestHabit()).isEqualTo("as listed");
        Comparison.Line line = comparison.policies().get(1);
        assertThat(line.acresEstablished()).isCloseTo(6, within(1e-9));
        assertThat(line.overListed().mean()).isCloseTo(3, within(1e-9));
        assertThat(line.overListed().low()).isCloseTo(3, within(1e-9));
        assertThat(line.falseStarts()).isEqualTo(4);
    }

    @Test
    void policyThatIsMissingInASeasonIsNotCompared() {
        SeasonResult without = new SeasonResult(
                "s",
                LocalDate.of(2020, 7, 3),
                1,
                List.of(score(Policy.AS_LISTED, 1), score(Policy.TOLD_THE_FUTURE, 9)));

        assertThat(Comparison.of(List.of(season(1, 1, 2, 3), without)).policies())
                .extracting(Comparison.Line::name)
                .containsExactly("as listed", Policy.TOLD_THE_FUTURE.words());
    }

    /** Of 200 means of 40 normal values, 95 % ranges must hold the truth about 190 times. */
    @Test
    void intervalsHoldTheTruthAsOftenAsTheySay() {
        SplittableRandom random = new SplittableRandom(5);
        int held = 0;
        for (int trial = 0; trial < 200; trial++) {
            double[] values =
                    random.doubles(40).map(u -> 3 + Math.log(u / (1 - u))).toArray();
            Interval interval = Interval.of(values);
            held += interval.low() <= 3 && 3 <= interval.high() ? 1 : 0;
            assertThat(interval.mean())
                    .isEqualTo(Arrays.stream(values).average().orElseThrow());
        }
        assertThat(held).isBetween(180, 198);
    }

    @Test
    void chancesAreHeldAgainstWhatCame() {
        List<Reliability.Step> steps = Reliability.of(List.of(season(1, 1, 6, 9)), Policy.RAINWARD);

        assertThat(steps).hasSize(2);
        assertThat(steps.get(0).toldFraction()).isCloseTo(0.3, within(1e-9));
        assertThat(steps.get(0).cameFraction()).isZero();
        assertThat(steps.get(1).cameFraction()).isEqualTo(1);
    }

    @Test
    void lossesNameWhatTookTheField() {
        List<Losses.Line> lines =
                Losses.of(List.of(season(1, 7, 4, 9)), Policy.RAINWARD, Policy.AS_LISTED);

        assertThat(lines).containsExactly(new Losses.Line(Optional.of(Cause.FALSE_START), 3, 0));
    }
}
