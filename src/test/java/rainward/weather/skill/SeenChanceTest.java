package rainward.weather.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rainward.farm.Window;
import rainward.weather.past.PastWeather;
import rainward.weather.rain.RainObservation;
import rainward.weather.trace.Skies;

/** Chances are held against rain that was seen, and against nothing else. */
class SeenChanceTest {

    static final Instant MIDNIGHT = Instant.parse("2026-07-14T00:00:00Z");

    static Window hours(int from, int to) {
        return new Window(
                MIDNIGHT.plus(Duration.ofHours(from)), MIDNIGHT.plus(Duration.ofHours(to)));
    }

    static SaidChance said(int from, int to, double chance) {
        return new SaidChance("nws", MIDNIGHT.minus(Duration.ofHours(10)), hours(from, to), chance);
    }

    static PastWeather past(List<RainObservation> rain) {
        return PastWeather.of(
                new PastWeather.Known(rain, List.of(), List.of(), List.of()),
                new PastWeather.Frame(
                        hours(0, 48), ZoneOffset.UTC, Skies.FARM, Skies.EVEN_YEAR, 1));
    }

    static RainObservation hour(int hour, double mm) {
        return new RainObservation(hours(hour, hour + 1), mm, "stage4", MIDNIGHT);
    }

    static List<SeenChance> seen(List<SaidChance> said, PastWeather past) {
        return SeenChance.of(said, past, instant -> Skies.EVEN_YEAR.months().get(6));
    }

    @Test
    void anObservedPeriodIsWetFromAHundredthOfAnInchOn() {
        List<RainObservation> rain = new ArrayList<>();
        for (int h = 0; h < 12; h++) {
            rain.add(hour(h, h == 3 ? 0.254 : h == 9 ? 0.2 : 0));
        }
        List<SeenChance> seen = seen(List.of(said(0, 6, 0.4), said(6, 12, 0.4)), past(rain));
        assertThat(seen).extracting(SeenChance::wet).containsExactly(true, false);
        assertThat(seen.get(0).usualProbability())
                .isEqualTo(Skies.EVEN_YEAR.months().get(6).wetChance(6));
    }

    @Test
    void aPeriodWithAnHourNobodySawIsNoCase() {
        List<RainObservation> rain = new ArrayList<>();
        for (int h = 0; h < 5; h++) {
            rain.add(hour(h, 1));
        }
        assertThat(seen(List.of(said(0, 6, 0.4)), past(rain))).isEmpty();
    }

    @Test
    void aDaysTotalThatHadToBePutIntoHoursJudgesNobody() {
        var day = new RainObservation(hours(0, 24), 14, "gauge", MIDNIGHT);
        assertThat(seen(List.of(said(0, 6, 0.4)), past(List.of(day)))).isEmpty();
        var dry = new RainObservation(hours(0, 24), 0, "gauge", MIDNIGHT);
        assertThat(seen(List.of(said(0, 6, 0.4)), past(List.of(dry))))
                .as("only dry days would count")
                .isEmpty();
    }

    @Test
    void ofHourlyChancesOneAQuarterDayCountsAndNoneUnderWay() {
        List<SaidChance> said = SaidChance.of(Skies.forecast(
                Skies.FARM,
                List.of(),
                java.util.stream.IntStream.range(0, 24)
                        .mapToObj(h -> Skies.chance(h, h + 1, 0.3))
                        .toList()));
        // Pulled at 09:00 UTC: 12, 18, 00 and 06 UTC of the next 24 hours.
        assertThat(said).hasSize(4);
        assertThat(said.get(0).window().from()).isEqualTo("2026-07-14T12:00:00Z");
    }

    /** A service that says p and gets rain with chance p squared, learnt from and tried. */
    @Test
    void aLessonIsTriedOnCasesItHasNotSeenAndHelpsAWetBiasedService() {
        LeadSkill lead = LeadSkill.of(biased(600)).get(0);
        assertThat(lead.lead()).isEqualTo(LeadClass.FIRST_DAY);
        assertThat(lead.recalibration().applied()).isTrue();
        LeadSkill.Effect effect = lead.recalibration().effect().orElseThrow();
        assertThat(effect.cases()).isEqualTo(200);
        assertThat(effect.afterBrierScore()).isLessThan(effect.beforeBrierScore());
        assertThat(lead.skill())
                .isCloseTo(1 - lead.score().brierScore() / lead.usualBrierScore(), within(1e-12));
    }

    @Test
    void withFewerThanTwoHundredCasesNothingIsApplied() {
        LeadSkill lead = LeadSkill.of(biased(199)).get(0);
        assertThat(lead.recalibration().applied()).isFalse();
        assertThat(lead.recalibration().effect()).isEmpty();
        assertThat(Recalibration.of(biased(199)).knowsAnything()).isFalse();
        assertThat(Recalibration.of(biased(200)).knows(14)).isTrue();
    }

    static List<SeenChance> biased(int cases) {
        var random = new SplittableRandom(77);
        List<SeenChance> seen = new ArrayList<>();
        for (int i = 0; i < cases; i++) {
            double p = random.nextInt(0, 11) / 10.0;
            Window window = hours(6 * i, 6 * i + 6);
            Instant issued = window.from().minus(Duration.ofHours(14));
            seen.add(new SeenChance(
                    new SaidChance("nws", issued, window, p), random.nextDouble() < p * p, 0.3));
        }
        return seen;
    }
}
